import type { StepMoment } from '../../runner/moment.ts'
import type { Compared, TellingOutcome } from '../kind.ts'
import { numbersAround, press } from '../telling.ts'
import { fieldsOf } from './chart.ts'

/** Each option; a number in the middle and those around the ones it is compared with; a word. */
export function outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[] {
  const { options, range, decimals = 0 } = fieldsOf(moment)
  if (options !== undefined) return Object.keys(options).map(answered)
  if (range === undefined) return [answered('-')]
  const usual = Number(((range[0] + range[1]) / 2).toFixed(decimals))
  return numbersAround(usual, compared('answer'), { step: 10 ** -decimals, range })
    .map((value) => Number(value.toFixed(decimals)))
    .map(answered)
}

const answered = (answer: string | number): TellingOutcome => ({
  label: String(answer),
  events: [{ event: 'answered', after: 2000, data: () => ({ answer, confirmed: true }) }, press('kept')],
})
