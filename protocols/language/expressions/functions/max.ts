import { rising } from '../bounds.ts'
import { type Formula, listOrNumbers, overNumbers } from '../formula.ts'

/** The greatest number. */
const max: Formula = {
  name: 'max',
  use: 'max(run.time)',
  check: (args, complain) => listOrNumbers(args, complain, max.use),
  apply: overNumbers((values, trials) => rising(values, trials, (xs) => Math.max(...xs))),
}
export default max
