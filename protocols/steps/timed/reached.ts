/** How far a trial went that came to its limit: asked then, told in whole numbers. */
import { z } from 'zod'
import type { StepMoment } from '../../runner/moment.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Refusal } from '../../runner/view.ts'
import { move } from '../press.ts'
import type { TimedFields } from './keys.ts'

/** One of what is counted at the limit, such as pegs. */
export const reached = z.strictObject({ what: z.string(), count: z.int().min(0).max(1_000_000) })
type Told = z.infer<typeof reached>

const reachedOf = ({ step }: StepMoment) => (step.fields as unknown as TimedFields).reached ?? {}

/** Names of what is asked for at the limit. */
export const namesReached = (moment: StepMoment): readonly string[] => Object.keys(reachedOf(moment))

/** How many there are of it; null where the file's expression has no value here, or it isn't asked for. */
export function mostOf(moment: StepMoment, what: string): number | null {
  const of = Object.hasOwn(reachedOf(moment), what) ? reachedOf(moment)[what]?.of : undefined
  if (of === undefined) return null
  if ('is' in of) return of.is
  const value = moment.value(of.from)
  return typeof value === 'object' && value !== null && 'n' in value ? Math.floor(value.n) : null
}

/** What has been told of it so far; null: nothing. */
export function toldOf(moment: StepMoment, what: string): number | null {
  const value = moment.trial?.readings[what]?.value
  return typeof value === 'number' ? value : null
}

/** Why a number can't be how far it went. */
export function notReached(moment: StepMoment, what: string, count: number): Refusal | null {
  if (!namesReached(moment).includes(what)) return refuse('no_such_column', { column: what })
  if (!Number.isInteger(count) || count < 0) return refuse('not_whole', { column: what })
  const most = mostOf(moment, what)
  return most !== null && count > most ? refuse('more_than_all', { most }) : null
}

const tells = (to: string, isLast: boolean) =>
  move(reached, {
    to,
    when: (moment, { what }) =>
      namesReached(moment).every((name) => name === what || toldOf(moment, name) !== null) === isLast,
    refuses: (moment, { what, count }) => notReached(moment, what, count),
    does: (moment, { what, count }: Told) => ({
      local: moment.local,
      trial: {
        readings: {
          ...moment.trial?.readings,
          [what]: {
            value: count,
            unit: '{count}',
            over: false,
            typed: true,
            confirmed: false,
            corrected: null,
          },
        },
      },
    }),
  })

/** Asked for until all of it was told. */
export const tellsReached = [tells('stopped', true), tells('asked', false)]
