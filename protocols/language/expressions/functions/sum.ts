import { rising } from '../bounds.ts'
import { sumOf } from '../exact.ts'
import { type Formula, listOrNumbers, overNumbers } from '../formula.ts'

/** The sum. */
const sum: Formula = {
  name: 'sum',
  use: 'sum(quality.grade)',
  check: (args, complain) => listOrNumbers(args, complain, sum.use),
  apply: overNumbers((values, trials) => rising(values, trials, sumOf)),
}
export default sum
