import type { StepMoment } from '../../runner/moment.ts'
import type { Compared, TellingOutcome } from '../kind.ts'
import { clockEvent, numbersAround, press } from '../telling.ts'
import { limitOf, plausible } from './chart.ts'
import { mostOf, namesReached } from './reached.ts'

/** Times are told apart by hundredths of a second. */
const STEP = 0.01
/** Shorter than this is a bounce of the key. */
const SHORTEST = 0.2
const USUAL = 10

const begun = [press('armed'), press('started')]

/** A usual time, times around those that it is compared with, and the limit. */
export function outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[] {
  const limit = limitOf(moment)
  const [least, most] = plausible(moment)
  const usual = Math.max(least, Math.min(USUAL, most, limit === null ? USUAL : limit / 2))
  const range = [SHORTEST, limit === null ? 86_400 : limit - STEP] as const
  const times = numbersAround(usual, compared('time'), { step: STEP, range }).map((time) => ({
    label: `${time} s`,
    events: [...begun, press('stopped', Math.round(1000 * time)), press('kept')],
  }))
  if (limit === null) return times
  return [
    ...times,
    ...farReached(moment).map(({ label, told }) => ({
      label,
      events: [...begun, clockEvent('limit_reached', Math.ceil(1000 * limit)), ...told, press('kept')],
    })),
  ]
}

/** At the limit: nothing of it was reached, or all but one. */
function farReached(moment: StepMoment) {
  const names = namesReached(moment)
  const tell = (count: (what: string) => number) =>
    names.map((what) => ({ event: 'reached', after: 2000, data: () => ({ what, count: count(what) }) }))
  if (names.length === 0) return [{ label: 'limit', told: [] }]
  return [
    { label: 'limit, 0', told: tell(() => 0) },
    { label: 'limit, all but 1', told: tell((what) => Math.max(0, (mostOf(moment, what) ?? 1) - 1)) },
  ]
}
