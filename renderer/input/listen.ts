/** The listeners: they turn the browser's events into signals and do nothing else. */
import { COMMAND_KEYS } from './keys.ts'
import {
  type Dropped,
  type InputKind,
  type InputState,
  LONG_PRESS_MS,
  NOTHING_DOWN,
  type Press,
  type Rules,
  type Signal,
  STUCK_MS,
  stuckKey,
  takeSignal,
} from './press.ts'

export interface InputSettings {
  readonly mainKey: string
  readonly pedalKey: string | null
}

export interface Listening {
  /** True when the press was used: it then does nothing else in the page. */
  press(press: Press): boolean
  /** The pedal was held down long enough to mean stop. */
  long(press: Press): void
  /** The main key has been down for so long that it may be stuck, or is up again. */
  stuck(isStuck: boolean): void
  /** ms after a press of a key in which another press of it is a bounce, as things stand. */
  bounceMs(): number
  /** The page no longer has the focus, or is about to go. */
  lost(at: number): void
}

const POINTER = 'pointer'
/** The cover is no dialog to the keys: what runs under it is worked blindly. */
const DIALOGS = '[role="dialog"], [role="alertdialog"], dialog:not(.cover)'
const FIELDS = 'input, textarea, select, [contenteditable=""], [contenteditable="true"], [role="textbox"]'

function inText(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(FIELDS) !== null
}

function inDialog(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(DIALOGS) !== null
}

/** Enter and Space press a button that has the focus, unless one of them is the main key. */
function isForButton(event: KeyboardEvent, settings: InputSettings): boolean {
  if (event.code !== 'Enter' && event.code !== 'Space' && event.code !== 'NumpadEnter') return false
  if (event.code === settings.mainKey || event.code === settings.pedalKey) return false
  return event.target instanceof Element && event.target.closest('button, a[href], summary') !== null
}

function kindOf(code: string, settings: InputSettings): InputKind {
  return code === settings.pedalKey ? 'pedal' : 'key'
}

/** A held or bouncing main key does nothing here, and must not scroll the page either. */
const swallowed = (dropped: Dropped | null): boolean =>
  dropped === 'repeat' || dropped === 'held' || dropped === 'bounce'

interface Ear {
  readonly signal: (signal: Signal) => boolean
  readonly settings: InputSettings
  readonly to: Listening
}

function onKeyDown(event: KeyboardEvent, ear: Ear): void {
  if (event.isComposing || inDialog(event.target) || isForButton(event, ear.settings)) return
  const used = ear.signal({
    signal: 'down',
    code: event.code,
    key: event.key,
    at: event.timeStamp,
    input: kindOf(event.code, ear.settings),
    repeat: event.repeat,
    modified: event.ctrlKey || event.altKey || event.metaKey,
    inText: inText(event.target),
  })
  if (used) event.preventDefault()
}

function onKeyUp(event: KeyboardEvent, ear: Ear): void {
  ear.signal({ signal: 'up', code: event.code, at: event.timeStamp })
  // A button with the focus is pressed by the release of Space: the main key must not do two things.
  const main = event.code === ear.settings.mainKey || event.code === ear.settings.pedalKey
  if (main && !inText(event.target) && !inDialog(event.target)) event.preventDefault()
}

const pointerDown = (at: number): Signal => ({
  signal: 'down',
  code: POINTER,
  key: POINTER,
  at,
  input: 'pointer',
  repeat: false,
  modified: false,
  inText: false,
})

function listenToPage(ear: Ear, ending: AbortSignal): void {
  const options = { capture: true, signal: ending }
  const gone = (event: Event): void => {
    ear.signal({ signal: 'lost' })
    ear.to.lost(event.timeStamp)
  }
  const up = (event: Event): void => void ear.signal({ signal: 'up', code: POINTER, at: event.timeStamp })
  addEventListener('keydown', (event) => onKeyDown(event, ear), options)
  addEventListener('keyup', (event) => onKeyUp(event, ear), options)
  addEventListener('pointerup', up, options)
  addEventListener('pointercancel', up, options)
  addEventListener('blur', (event) => event.target === window && gone(event), options)
  addEventListener('pagehide', gone, options)
  document.addEventListener('visibilitychange', (event) => document.hidden && gone(event), options)
}

/**
 * Listens to keys, pedal and focus in the whole page until the returned function is called, and gives back
 * `pointer`, which the one large control hands its pointer events to.
 */
export function listen(
  settings: InputSettings,
  to: Listening,
): { readonly end: () => void; readonly pointer: (event: PointerEvent) => void } {
  const rules = (): Rules => ({ bounceMs: to.bounceMs(), evenInText: [COMMAND_KEYS.stop, 'Escape'] })
  let state: InputState = NOTHING_DOWN
  let timer: ReturnType<typeof setTimeout> | undefined
  let stuckTimer: ReturnType<typeof setTimeout> | undefined
  let wasStuck = false
  const watchStuck = (): void => {
    clearTimeout(stuckTimer)
    const isStuck = stuckKey(state, performance.now(), settings.mainKey)
    if (isStuck !== wasStuck) to.stuck(isStuck)
    wasStuck = isStuck
    if (!isStuck && state.down[settings.mainKey] !== undefined) stuckTimer = setTimeout(watchStuck, STUCK_MS)
  }
  const isMain = (each: Signal): boolean =>
    each.signal === 'down' && (each.code === settings.mainKey || each.code === settings.pedalKey)
  const signal = (each: Signal): boolean => {
    const meaning = takeSignal(state, each, rules())
    state = meaning.state
    watchStuck()
    if (meaning.long !== null) to.long(meaning.long)
    if (meaning.press === null) return isMain(each) && swallowed(meaning.dropped)
    if (meaning.press.input === 'pedal') {
      clearTimeout(timer)
      const wait = LONG_PRESS_MS - (performance.now() - meaning.press.at)
      timer = setTimeout(() => signal({ signal: 'held', at: performance.now() }), Math.max(0, wait) + 1)
    }
    return to.press(meaning.press)
  }
  const ear: Ear = { signal, settings, to }
  const ending = new AbortController()
  listenToPage(ear, ending.signal)
  return {
    end: () => {
      clearTimeout(timer)
      clearTimeout(stuckTimer)
      ending.abort()
    },
    pointer: (event) => {
      if (event.button === 0 && event.isPrimary) signal(pointerDown(event.timeStamp))
    },
  }
}
