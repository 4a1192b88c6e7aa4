/** The phases in which giving is held up: paused, halted for the client's sake, stale after a long gap. */
import { deviate, told } from './afterwards.ts'
import { causeOf, PRACTISE, SETTLE_NOTHING, SETTLE_TRIAL } from './chart-steps.ts'
import { SETTLE_HAND } from './chart-sections.ts'
import type { Ground } from './due.ts'
import { grow, newest, replaced } from './grown.ts'
import type { Happened, State } from './state.ts'
import { stepKind } from './step-ground.ts'
import { type ChartNode, type Transition, transition } from './transitions.ts'
import { refuse } from './refuse.ts'
import type { Refusal } from './view.ts'

export const SETTLE_TEST = '=settle_test'
export const CLOSE = '=close'
/** Id of the way back into the step that was left. */
export const BACK = '=back'
/** Id of a phase; no name of a file has a `=`. */
export const phase = (name: string): string => `=${name}`

export function heldUp(ground: Ground): Record<string, ChartNode> {
  return { paused: paused(), halted: halted(ground), stale: stale() }
}

function paused(): ChartNode {
  const resumed = (late: boolean): Transition =>
    transition(
      late ? phase('confirming') : BACK,
      { main: true, when: (_state, event) => event.late === late },
      (state, event) => ({ ...pauseOver(state, event), ...(late ? { gap: true } : { because: null }) }),
    )
  return {
    on: {
      resumed: [resumed(true), resumed(false)],
      interrupted: [
        transition(phase('confirming'), { automatic: true, when: notPassing }, (state, event) => ({
          ...pauseOver(state, event),
          because: causeOf(event),
          gap: state.gap || event.late,
        })),
        transition(null, { automatic: true, when: (state, event) => !notPassing(state, event) }, () => ({})),
      ],
    },
  }
}

/** A pause is over once it goes on, is cut or the test is left. */
export function pauseOver({ pauses }: State, { at }: Happened): Partial<State> {
  const last = newest(pauses, () => true)
  return last?.to === null ? { pauses: replaced(pauses, pauses.length - 1, { ...last, to: at }) } : {}
}

const notPassing = (_state: State, event: Happened) => causeOf(event) !== 'focus_lost'

const staysSo: Transition = transition(null, { automatic: true }, (state, event) => ({
  gap: state.gap || event.late,
}))

const ENDS = {
  nothing: SETTLE_NOTHING,
  trial: SETTLE_TRIAL,
  hand: SETTLE_HAND,
  test: SETTLE_TEST,
  visit: SETTLE_TEST,
} as const

/** Clock and sound have ended; now it is told what ends, why, how much it hurts and what was done. */
function halted(ground: Ground): ChartNode {
  const settles = (ends: keyof typeof ENDS, late: boolean): Transition =>
    told(
      'settled',
      {
        when: (state, body, event) => body.ends === ends && late === (state.gap || event.late),
        refuses: (state) => nothingToEnd(ground, state, ends),
        change: (state, { reason, pain, done }, event) => ({
          because: null,
          stops: grow(state.stops, { ends, reason, pain, done, at: event.at, by: event.user }),
          ...(late && ends === 'nothing' && { gap: true }),
          ...(late && (ends === 'trial' || ends === 'hand') && wentOnLate(state, event)),
        }),
      },
      late && ends === 'nothing' ? phase('confirming') : BACK,
      late && ends === 'nothing' ? undefined : ENDS[ends],
    )
  return {
    on: {
      settled: (Object.keys(ENDS) as (keyof typeof ENDS)[]).flatMap((ends) => [
        settles(ends, false),
        settles(ends, true),
      ]),
      interrupted: [staysSo],
    },
  }
}

const wentOnLate = (state: State, event: Happened): Partial<State> => ({
  gap: false,
  ...deviate(state, event, { code: 'went_on_late', what: '', reason: '', norms: 'caution' }),
})

/** Why a stop can't end a trial or a hand: there is none at hand. */
function nothingToEnd(ground: Ground, state: State, ends: keyof typeof ENDS): Refusal | null {
  const spot = ground.tree.spots.get(state.at)
  if (ends === 'trial') {
    const trial = spot?.node.node === 'step' && Object.keys(stepKind(spot.node).columns(spot.node)).length > 0
    return trial ? null : refuse('no_trial', { step: state.at })
  }
  if (ends !== 'hand') return null
  const hand = spot?.around.some(
    ({ name, fields }) => fields.in === 'hands' && state.place[name] !== undefined,
  )
  return hand === true ? null : refuse('no_hand', { step: state.at })
}

/** What a reopened administration may be told to do. */
function reopened(choice: 'go_on' | 'practice_again' | 'close', raises: string): Transition {
  return told(
    'reopened',
    {
      when: (_state, body) => body.choice === choice,
      change: (state, _body, event) => ({
        gap: false,
        because: null,
        ...(choice === 'go_on' && wentOnLate(state, event)),
      }),
    },
    BACK,
    raises,
  )
}

/** Reopened after the longest gap: going on is a deviation; or the practice comes again, or it ends here. */
function stale(): ChartNode {
  return {
    on: {
      reopened: [
        reopened('go_on', SETTLE_NOTHING),
        reopened('practice_again', PRACTISE),
        reopened('close', CLOSE),
      ],
      interrupted: [staysSo],
    },
  }
}
