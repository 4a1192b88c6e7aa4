import type { StepMoment } from '../../runner/moment.ts'
import type { Compared, TellingOutcome } from '../kind.ts'
import { numbersAround, press } from '../telling.ts'
import { fieldsOf } from './chart.ts'

/** A value in the middle of what is plausible, and values around those that it is compared with. */
export function outcomes(moment: StepMoment, compared: Compared): readonly TellingOutcome[] {
  const { decimals = 1, range, unit } = fieldsOf(moment)
  const usual = Number(((range[0] + range[1]) / 2).toFixed(decimals))
  return numbersAround(usual, compared('value'), { step: 10 ** -decimals, range })
    .map((value) => Number(value.toFixed(decimals)))
    .map((value) => ({
      label: `${value} ${unit}`,
      events: [{ event: 'entered', after: 2000, data: () => ({ value, confirmed: true }) }, press('kept')],
    }))
}
