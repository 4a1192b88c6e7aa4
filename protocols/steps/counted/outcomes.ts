import type { StepMoment } from '../../runner/moment.ts'
import type { Compared, RehearsedEvent, TellingOutcome } from '../kind.ts'
import { clockEvent, numbersAround, press } from '../telling.ts'
import { windowOf } from '../window.ts'
import { fieldsOf } from './chart.ts'

/** A usual count, counts around those that it is compared with, and one that was tapped along. */
export function outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[] {
  const [lowest, highest] = fieldsOf(moment).range
  const window = Math.ceil(1000 * (windowOf(moment) ?? 0))
  const usual = Math.round(lowest + (highest - lowest) * 0.4)
  const whole = compared('count').flatMap((n) => [Math.floor(n), Math.ceil(n)])
  const counts = numbersAround(usual, whole, { step: 1, range: [0, 1_000_000] })
  return [
    ...counts.map((count) => ({ label: String(count), events: given(count, window, 0) })),
    { label: `${usual}, tapped along`, events: given(usual, window, 2) },
  ]
}

/** So many taps within the window, whatever is entered at its end: nobody has to tap. */
function given(count: number, window: number, taps: number): readonly RehearsedEvent[] {
  const gap = Math.floor(window / (taps + 1))
  return [
    press('armed'),
    press('started'),
    ...Array.from({ length: taps }, () => press('tapped', gap)),
    clockEvent('window_ended', window - taps * gap),
    { event: 'entered', after: 2000, data: () => ({ count, confirmed: true }) },
    press('kept'),
  ]
}
