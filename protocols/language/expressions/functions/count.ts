import { none, number, trialsOf, valuesIn } from '../datum.ts'
import { describe } from '../units-of-types.ts'
import { type Formula, heldBy } from '../formula.ts'

/** How many rows there are, those without a value included. It is the one function that no rows make zero. */
const count: Formula = {
  name: 'count',
  use: 'count(run.time)',
  check(args, complain) {
    const [values] = args
    if (values === undefined || args.length !== 1)
      return complain('wrong_arguments', 'count takes one list.', `Write ${count.use}.`)
    if (heldBy(values.type) === null)
      return complain(
        'wrong_type',
        `count takes a list, not ${describe(values.type)}.`,
        `Write ${count.use}.`,
        values,
      )
    return { type: { is: 'number', unit: '{count}' }, args: [values.term] }
  },
  apply([values]) {
    if (values === undefined || values.is === 'none') return values ?? none('no_rows')
    return number(valuesIn(values).length, false, trialsOf(values))
  },
}
export default count
