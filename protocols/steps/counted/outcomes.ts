import type { StepMoment } from '../../runner/moment.ts'
import type { Compared, TellingOutcome } from '../kind.ts'
import { clockEvent, numbersAround, press } from '../telling.ts'
import { fieldsOf, windowOf } from './chart.ts'

/** A usual count, and counts around those that it is compared with. */
export function outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[] {
  const [lowest, highest] = fieldsOf(moment).range
  const window = Math.ceil(1000 * (windowOf(moment) ?? 0))
  const usual = Math.round(lowest + (highest - lowest) * 0.4)
  const whole = compared('count').flatMap((n) => [Math.floor(n), Math.ceil(n)])
  return numbersAround(usual, whole, { step: 1, range: [0, 1_000_000] }).map((count) => ({
    label: String(count),
    events: [
      press('armed'),
      press('started'),
      clockEvent('window_ended', window),
      { event: 'entered', after: 2000, data: () => ({ count, confirmed: true }) },
      press('kept'),
    ],
  }))
}
