import { list, none, valuesIn } from '../datum.ts'
import { describe } from '../units-of-types.ts'
import { type Formula, heldBy } from '../formula.ts'

/** The values that there are: drops the missing ones, on purpose. */
const given: Formula = {
  name: 'given',
  use: 'given(run.time)',
  check(args, complain) {
    const [values] = args
    const held = values === undefined ? null : heldBy(values.type)
    if (values === undefined || args.length !== 1)
      return complain('wrong_arguments', 'given takes one list.', `Write ${given.use}.`)
    if (held === null)
      return complain(
        'wrong_type',
        `given takes a list, not ${describe(values.type)}.`,
        `Write ${given.use}.`,
        values,
      )
    return { type: { is: 'list', of: held }, args: [values.term] }
  },
  apply([values]) {
    if (values === undefined || values.is === 'none') return values ?? none('no_rows')
    return list(valuesIn(values).filter((item) => item.is !== 'none'))
  },
}
export default given
