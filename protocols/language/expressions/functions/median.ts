import { rising } from '../bounds.ts'
import { medianOf } from '../exact.ts'
import { type Formula, listOrNumbers, overNumbers } from '../formula.ts'

/** The middle number, or the mean of the two in the middle. */
const median: Formula = {
  name: 'median',
  use: 'median(run.time)',
  check: (args, complain) => listOrNumbers(args, complain, median.use),
  apply: overNumbers((values, trials) => rising(values, trials, medianOf)),
}
export default median
