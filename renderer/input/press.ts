/**
 * Which key, pointer and pedal events are presses. Pure: what the listeners saw goes in, what it means comes
 * out, so that every rule about repeats, bounces and held keys can be tried without a browser.
 */

export type InputKind = 'key' | 'pointer' | 'pedal'

/** What a listener saw of one event; times in ms on the page's monotonic clock, from the event itself. */
export type Signal =
  | {
      readonly signal: 'down'
      readonly code: string
      readonly key: string
      readonly at: number
      readonly input: InputKind
      readonly repeat: boolean
      /** Ctrl, Alt or Meta was held: the press belongs to the system or the browser. */
      readonly modified: boolean
      /** A place where text is typed had the focus. */
      readonly inText: boolean
    }
  | { readonly signal: 'up'; readonly code: string; readonly at: number }
  /** Time has passed: only then can a long press be told. */
  | { readonly signal: 'held'; readonly at: number }
  /** The page lost the focus: releases that follow will not be seen here. */
  | { readonly signal: 'lost' }

export interface Press {
  readonly code: string
  readonly key: string
  readonly at: number
  readonly input: InputKind
}

/** Why a press was not taken. */
export type Dropped = 'repeat' | 'held' | 'bounce' | 'text' | 'modified'

export interface Rules {
  /** ms after a press of a key in which another press of it is a bounce. */
  readonly bounceMs: number
  /** Codes that also act where text is typed: a stop must never be swallowed by a field. */
  readonly evenInText: readonly string[]
}

interface Down {
  readonly press: Press
  readonly toldLong: boolean
  /** When the key was last told to be down: a held key tells it again and again. */
  readonly told: number
}

export interface InputState {
  readonly down: Readonly<Record<string, Down>>
  readonly lastPress: Readonly<Record<string, number>>
  readonly lastRelease: Readonly<Record<string, number>>
}

export interface Meaning {
  readonly state: InputState
  readonly press: Press | null
  /** The press that has now become a long one, told once. */
  readonly long: Press | null
  readonly dropped: Dropped | null
}

export const NOTHING_DOWN: InputState = { down: {}, lastPress: {}, lastRelease: {} }

/** How long a pedal is held before the press means stop. */
export const LONG_PRESS_MS = 1000

/** How long a key is down before it may be stuck: long enough for every press that is meant. */
export const STUCK_MS = 3000

/**
 * A held key repeats itself at latest after so long (longest delays of systems: about 1 to 1.8 s, from memory). A press
 * that is no repeat and comes later than that after the last one means that a release was never told: by a dialog of
 * the system, a switch between windows, a program for remote desks.
 */
export const UNTOLD_RELEASE_MS = 2000

/** Contacts chatter when they open as well: a press this soon after a release is none. */
export const RELEASE_CHATTER_MS = 30

const quiet = (state: InputState, dropped: Dropped | null = null): Meaning => ({
  state,
  press: null,
  long: null,
  dropped,
})

function without<T>(of: Readonly<Record<string, T>>, key: string): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(of).filter(([each]) => each !== key))
}

function whyDropped(state: InputState, signal: Signal & { signal: 'down' }, rules: Rules): Dropped | null {
  if (signal.modified) return 'modified'
  if (signal.inText && !rules.evenInText.includes(signal.code)) return 'text'
  if (signal.repeat) return 'repeat'
  const down = state.down[signal.code]
  if (down !== undefined && signal.at - down.told < UNTOLD_RELEASE_MS) return 'held'
  const pressed = state.lastPress[signal.code]
  if (pressed !== undefined && signal.at - pressed < rules.bounceMs) return 'bounce'
  const released = state.lastRelease[signal.code]
  if (released !== undefined && signal.at - released < Math.min(RELEASE_CHATTER_MS, rules.bounceMs))
    return 'bounce'
  return null
}

/** The key told once more that it is down. */
function stillDown(state: InputState, { code, at }: Signal & { signal: 'down' }): InputState {
  const down = state.down[code]
  return down === undefined ? state : { ...state, down: { ...state.down, [code]: { ...down, told: at } } }
}

/** True once a key has been down for so long that nobody can have meant it. */
export function stuckKey({ down }: InputState, at: number, code: string): boolean {
  const found = down[code]
  return found !== undefined && at - found.press.at >= STUCK_MS
}

function takeDown(state: InputState, signal: Signal & { signal: 'down' }, rules: Rules): Meaning {
  const dropped = whyDropped(state, signal, rules)
  // Some systems never tell the release of a key that was pressed together with Meta.
  if (dropped === 'repeat' || dropped === 'held' || dropped === 'modified')
    return quiet(stillDown(state, signal), dropped)
  const press: Press = { code: signal.code, key: signal.key, at: signal.at, input: signal.input }
  const down = { ...state.down, [signal.code]: { press, toldLong: dropped !== null, told: signal.at } }
  if (dropped !== null) return quiet({ ...state, down }, dropped)
  const lastPress = { ...state.lastPress, [signal.code]: signal.at }
  return { state: { ...state, down, lastPress }, press, long: null, dropped: null }
}

function takeHeld(state: InputState, at: number): Meaning {
  const found = Object.values(state.down).find(
    (each) => each.press.input === 'pedal' && !each.toldLong && at - each.press.at >= LONG_PRESS_MS,
  )
  if (found === undefined) return quiet(state)
  const down = { ...state.down, [found.press.code]: { ...found, toldLong: true } }
  return { state: { ...state, down }, press: null, long: found.press, dropped: null }
}

/** Takes one signal. A press counts once, when it goes down; it counts again only after it was let go. */
export function takeSignal(state: InputState, signal: Signal, rules: Rules): Meaning {
  switch (signal.signal) {
    case 'down':
      return takeDown(state, signal, rules)
    case 'up':
      return state.down[signal.code] === undefined
        ? quiet(state)
        : quiet({
            ...state,
            down: without(state.down, signal.code),
            lastRelease: { ...state.lastRelease, [signal.code]: signal.at },
          })
    case 'held':
      return takeHeld(state, signal.at)
    case 'lost':
      return quiet({ ...state, down: {} })
  }
}
