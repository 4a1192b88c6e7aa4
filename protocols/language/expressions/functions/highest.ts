import { type Formula, heldBy } from '../formula.ts'
import { checkPicking, pickByRank } from '../picking.ts'
import { describe } from '../units-of-types.ts'

/** The n highest numbers as a list. */
const highest: Formula = {
  name: 'highest',
  use: 'highest(run.time, 3)',
  check(args, complain) {
    const [values] = args
    if (values !== undefined && heldBy(values.type)?.is !== 'number')
      return complain(
        'wrong_type',
        `highest takes a list of numbers, not ${describe(values.type)}.`,
        `Write ${highest.use}.`,
        values,
      )
    return checkPicking(args, complain, highest.use, false)
  },
  apply: (args) => pickByRank(args, true),
}
export default highest
