import type { StepMoment } from '../../runner/moment.ts'
import type { Compared, RehearsedEvent, TellingOutcome } from '../kind.ts'
import { clockEvent, numbersAround, press } from '../telling.ts'
import { windowOf } from '../window.ts'
import { cueOf, SETTLING } from './chart.ts'

const USUAL = 20
/** More than a hand can do in any window of a test. */
const MOST = 400

/** A usual count of presses, and counts around those that it is compared with. */
export function outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[] {
  const window = Math.ceil(1000 * (windowOf(moment) ?? 0))
  const isOpening = cueOf(moment) === null
  return numbersAround(USUAL, compared('count'), { step: 1, range: [isOpening ? 1 : 0, MOST] })
    .map(Math.floor)
    .map((count) => ({ label: String(count), events: given(count, window, isOpening) }))
}

/** So many presses, evenly over the window; the first may be what opens it. */
function given(count: number, window: number, isOpening: boolean): readonly RehearsedEvent[] {
  const presses = isOpening ? count - 1 : count
  const gap = Math.floor(window / (presses + 1))
  return [
    press('armed'),
    press('started'),
    ...Array.from({ length: presses }, () => press('tapped', gap)),
    clockEvent('window_ended', window - presses * gap),
    clockEvent('settled', 1000 * SETTLING),
    press('kept'),
  ]
}
