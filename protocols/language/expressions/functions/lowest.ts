import { type Formula, heldBy } from '../formula.ts'
import { checkPicking, pickByRank } from '../picking.ts'
import { describe } from '../units-of-types.ts'

/** The n lowest numbers as a list. */
const lowest: Formula = {
  name: 'lowest',
  use: 'lowest(run.time, 3)',
  check(args, complain) {
    const [values] = args
    if (values !== undefined && heldBy(values.type)?.is !== 'number')
      return complain(
        'wrong_type',
        `lowest takes a list of numbers, not ${describe(values.type)}.`,
        `Write ${lowest.use}.`,
        values,
      )
    return checkPicking(args, complain, lowest.use, false)
  },
  apply: (args) => pickByRank(args, false),
}
export default lowest
