import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { fieldsOf } from './chart.ts'
import { unitOf } from './columns.ts'

/** What the screen draws of a question. */
export type AskFace = {
  /** What may be picked, in the file's order; empty where the answer is typed. */
  readonly options: readonly { readonly id: string; readonly text: string }[]
  /** How a number is typed; null where none is. */
  readonly number: {
    readonly unit: string
    readonly decimals: number | null
    /** Answers outside it are refused as `out_of_range` until they are confirmed. */
    readonly plausible: readonly [number, number]
  } | null
  /** The longest answer in characters, where it is words. */
  readonly longest: number | null
  readonly answer: string | number | null
  readonly attempt: number
  readonly voidsLeft: number | null
  /** The key is dead for a second from here. */
  readonly dead: ClockTime | null
}

export function face(moment: StepMoment): AskFace {
  const fields = fieldsOf(moment)
  const { options = {}, range, decimals, words } = fields
  return {
    options: Object.entries(options).map(([id, text]) => ({ id, text: moment.say(text) })),
    number:
      range === undefined ? null : { unit: unitOf(fields), decimals: decimals ?? null, plausible: range },
    longest: words ?? null,
    answer: moment.trial?.readings.answer?.value ?? null,
    attempt: moment.attempt,
    voidsLeft: moment.voidsLeft,
    dead: moment.dead,
  }
}
