import { rising } from '../bounds.ts'
import { type Formula, listOrNumbers, overNumbers } from '../formula.ts'

/** The least number. */
const min: Formula = {
  name: 'min',
  use: 'min(run.time)',
  check: (args, complain) => listOrNumbers(args, complain, min.use),
  apply: overNumbers((values, trials) => rising(values, trials, (xs) => Math.min(...xs))),
}
export default min
