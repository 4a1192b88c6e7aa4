/** Where we are, kept in the address after `#`, so that a reload comes back to the same screen. It holds ids only. */
import { type ComponentType, useSyncExternalStore } from 'react'

export type Params = Readonly<Record<string, string>>

export interface Route {
  /** Such as `client/:id`; the part after a colon comes in `params`. */
  readonly path: string
  /** Key of the words that head the window: never a client's name, which browsers would remember. */
  readonly title: string
  readonly Screen: ComponentType<{ readonly params: Params }>
  /** True where nothing but the screen itself is shown: it is read at arm's length. */
  readonly isBare?: boolean
  /** The parameter that names whose record it shows: while a visit is open, only that visit's client. */
  readonly client?: string
}

const placeNow = () => window.location.hash.replace(/^#\/?/, '')

function onChange(listener: () => void): () => void {
  window.addEventListener('hashchange', listener)
  return () => window.removeEventListener('hashchange', listener)
}

export function usePlace(): string {
  return useSyncExternalStore(onChange, placeNow)
}

/** Goes to a place, such as `client/0198…`; the empty place is the first screen. */
export function go(place: string): void {
  window.location.hash = `#/${place}`
}
