import { none } from '../datum.ts'
import type { Formula } from '../formula.ts'
import { checkUnitArgument } from '../unit-argument.ts'
import { describe } from '../units-of-types.ts'

/** A bare number given a unit: `quantity(2, 'min')`. */
const quantity: Formula = {
  name: 'quantity',
  use: "quantity(2, 'min')",
  check(args, complain) {
    const unit = checkUnitArgument(args, complain, quantity.use)
    const [number] = args
    if (unit === null || number === undefined) return null
    if (number.type.is !== 'number')
      return complain(
        'wrong_type',
        `quantity takes a number, not ${describe(number.type)}.`,
        `Write ${quantity.use}.`,
        number,
      )
    if (number.type.unit !== null && number.type.unit !== '1')
      return complain(
        'unit_mismatch',
        `This is ${describe(number.type)} already.`,
        `To change the unit write in_unit(…, '${unit}').`,
        number,
      )
    return { type: { is: 'number', unit }, args: [number.term] }
  },
  apply: ([number]) => number ?? none('no_rows'),
}
export default quantity
