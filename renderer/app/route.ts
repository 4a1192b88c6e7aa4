/**
 * Where we are, kept in the address after `#`, so that a reload comes back to the same screen. It holds ids
 * only. A screen is found by listing `screens/<name>/route.tsx`; adding one edits nothing else.
 */
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

const listed = import.meta.glob<Route>('../screens/*/route.tsx', { eager: true, import: 'default' })
const routes = Object.values(listed)

function match(path: string, wanted: readonly string[]): Params | null {
  const parts = path.split('/').filter(Boolean)
  if (parts.length !== wanted.length) return null
  const params: Record<string, string> = {}
  for (const [index, part] of parts.entries()) {
    const given = wanted[index] ?? ''
    if (part.startsWith(':')) params[part.slice(1)] = decodeURIComponent(given)
    else if (part !== given) return null
  }
  return params
}

export interface Here {
  readonly place: string
  readonly route: Route
  readonly params: Params
}

/** The screen for a place such as `client/0198…`; the first screen for a place that there isn't. */
export function routeFor(place: string): Here | null {
  const wanted = place.split('/').filter(Boolean)
  for (const route of routes) {
    const params = match(route.path, wanted)
    if (params) return { place, route, params }
  }
  return place === '' ? null : routeFor('')
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
