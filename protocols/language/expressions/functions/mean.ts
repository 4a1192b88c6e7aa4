import { rising } from '../bounds.ts'
import { meanOf } from '../exact.ts'
import { type Formula, listOrNumbers, overNumbers } from '../formula.ts'

/** The arithmetic mean. */
const mean: Formula = {
  name: 'mean',
  use: 'mean(squeeze.reading)',
  check: (args, complain) => listOrNumbers(args, complain, mean.use),
  apply: overNumbers((values, trials) => rising(values, trials, meanOf)),
}
export default mean
