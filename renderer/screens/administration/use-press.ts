/** From a press to what it means: the main key, a happening, or a command. */
import { useEffect, useRef, useState } from 'react'
import type { Stamp } from '../../../protocols/runner/events.ts'
import type { AdministrationView, SheetCell, StepView } from '../../../protocols/runner/view.ts'
import { CLOCK, stampOf } from '../../input/clock.ts'
import { type Command, commandOf, happeningKeys, printed } from '../../input/keys.ts'
import type { InputKind, Press } from '../../input/press.ts'
import { hush } from '../../input/sound.ts'
import { faceOf } from '../../steps/registry.ts'
import type { EventData } from '../../steps/face.ts'
import { isOpen } from './commands.tsx'
import { keyed } from './side.tsx'
import type { Desk } from './desk.ts'
import { openIn } from './sheet/grid.ts'
import {
  breakIntent,
  commandIntent,
  DEAD_MS,
  happeningIntent,
  isAtOnce,
  mainIntent,
  offers,
} from './intents.ts'

interface Presses {
  readonly desk: Desk
  readonly view: AdministrationView | null
  readonly settings: {
    readonly mainKey: string
    readonly pedalKey: string | null
    readonly bounceMs: number
  }
  /** Looks whether the clocks can be trusted; see `useClockWatch`. */
  readonly look: () => boolean
  /** The cell of a page that was typed in last. */
  readonly cell: SheetCell | null
  /** Opens the form or panel of a command that needs more than a key. */
  readonly open: (panel: Command | 'gaps') => void
}

/** Presses that wait for an answer while no trial is under way; more would only be guesses at what will be there. */
const MOST_WAITING = 6

/** True from a trial that is made ready to its end: each press has a stamp of its own and counts, however long it waits. */
const isUnderWay = (step: StepView | null): boolean =>
  step !== null && faceOf(step).isTrial && step.state !== 'waiting'

const stampAt = (at: number, input: InputKind): Stamp => stampOf({ at, input }, performance.now())

const standing = (step: StepView): string => JSON.stringify([step.name, step.place])

export function usePresses({ desk, view, settings, look, cell, open }: Presses) {
  const prepared = useRef<{ readonly at: string; readonly data: EventData | null }>({ at: '', data: null })
  const keys = happeningKeys(keyed(view?.step ?? null))

  const main = (at: number, input: InputKind): void => {
    // What it was meant for was just broken off: it must not do whatever comes after that.
    if (!look()) return
    // What is open on a page is asked for once, when it is about to be left.
    if (view?.phase === 'giving' && view.sheet !== null && openIn(view.sheet).length > 0) return open('gaps')
    if (desk.state().waiting > MOST_WAITING && !isUnderWay(view?.step ?? null)) return
    void desk.act(
      mainIntent(stampAt(at, input), (step) =>
        prepared.current.at === standing(step) ? prepared.current.data : null,
      ),
      false,
    )
  }
  const happening = (name: string, at: number, input: InputKind): void => {
    void desk.act(happeningIntent(name, stampAt(at, input)), false)
  }
  const command = (which: Command, at: number, input: InputKind): void => {
    if (view === null || !isOpen(view, which)) return
    if (which === 'stop') hush()
    if (isAtOnce(which)) void desk.act(commandIntent(which, stampAt(at, input), cell), false)
    else open(which)
  }
  const press = (pressed: Press): boolean => {
    const { code, key, at, input } = pressed
    if (input === 'pointer' || code === settings.mainKey || code === settings.pedalKey) {
      main(at, input)
      return true
    }
    const named = Object.entries(keys).find(([, each]) => each === printed(key))
    if (named !== undefined && view !== null && offers(view, 'happened')) {
      happening(named[0], at, input)
      return true
    }
    const asked = commandOf(key, view !== null && offers(view, 'happened') ? keys : {})
    if (asked === null) return false
    command(asked, at, input)
    return true
  }
  return {
    keys,
    press,
    main,
    happening,
    command,
    bounceMs: () => (view?.step ? faceOf(view.step).bounceMs(view.step) : null) ?? settings.bounceMs,
    prepare: (data: EventData | null) => {
      if (view?.step) prepared.current = { at: standing(view.step), data }
    },
    /** A long press of the pedal ends everything at once. */
    long: (pressed: Press) => command('stop', pressed.at, pressed.input),
    lost: () => void desk.act(breakIntent('focus_lost'), true),
  }
}

/** True for the second after a stop in which the main key does nothing; then it comes alive by itself. */
export function useDead(view: AdministrationView | null): boolean {
  const step = view?.step ?? null
  const dead = step === null ? null : faceOf(step).dead(step)
  const until = dead !== null && dead.clock === CLOCK ? dead.at + DEAD_MS : 0
  const [passed, setPassed] = useState(0)
  useEffect(() => {
    if (until === 0) return
    const timer = setTimeout(() => setPassed(until), Math.max(0, until - performance.now()))
    return () => clearTimeout(timer)
  }, [until])
  return until !== 0 && passed !== until
}
