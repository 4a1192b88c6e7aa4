/** Moments that are stamped while the clock runs on. */
import { z } from 'zod'
import { stamp as inputStamp, type Stamp } from '../../runner/events.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Refusal } from '../../runner/view.ts'
import { move } from '../press.ts'
import type { TimedFields } from './keys.ts'

export const split = z.strictObject({ what: z.string(), stamp: inputStamp })

const splitsOf = ({ step }: StepMoment) => (step.fields as unknown as TimedFields).splits ?? {}

/** The moments to stamp, in the file's order, with what is seen then and the seconds that it took. */
export const splitsIn = (moment: StepMoment) =>
  Object.entries(splitsOf(moment)).map(([name, text]) => {
    const seconds = moment.trial?.readings[name]?.value
    return { name, text: moment.say(text), seconds: typeof seconds === 'number' ? seconds : null }
  })

/** Stamps so far, the start first. */
const stampsOf = ({ trial }: StepMoment): readonly number[] => trial?.stamps ?? []

/** Why a stop can't lie where it does: a moment on the way comes after it. */
export const beforeSplit = (moment: StepMoment, { at }: Stamp): Refusal | null =>
  at < Math.max(0, ...stampsOf(moment)) && stampsOf(moment).length > 1 ? refuse('out_of_order') : null

/** Stamps the moment; the clock runs on. */
export const splits = move(split, {
  to: 'running',
  refuses: (moment, { what, stamp }) => {
    const start = moment.local.start as Stamp
    if (!Object.hasOwn(splitsOf(moment), what)) return refuse('no_such_split', { what })
    if (stamp.clock !== start.clock) return refuse('other_clock')
    if (moment.trial?.readings[what] !== undefined) return refuse('split_again')
    return stamp.at <= start.at ? refuse('out_of_order') : null
  },
  does: (moment, { what, stamp }) => {
    const start = moment.local.start as Stamp
    const value = (stamp.at - start.at) / 1000
    return {
      local: moment.local,
      trial: {
        stamps: [...stampsOf(moment), stamp.at],
        readings: {
          ...moment.trial?.readings,
          [what]: { value, unit: 's', over: false, typed: false, confirmed: false, corrected: null },
        },
      },
    }
  },
})
