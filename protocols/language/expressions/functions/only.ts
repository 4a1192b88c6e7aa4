import { none, trialsOf, valuesIn } from '../datum.ts'
import { describe } from '../units-of-types.ts'
import { type Formula, heldBy } from '../formula.ts'

/** The one value that there is; several are as wrong as none. */
const only: Formula = {
  name: 'only',
  use: 'only(run.time)',
  check(args, complain) {
    const [values] = args
    const held = values === undefined ? null : heldBy(values.type)
    if (values === undefined || args.length !== 1)
      return complain('wrong_arguments', 'only takes one list.', `Write ${only.use}.`)
    if (held === null)
      return complain(
        'wrong_type',
        `only takes a list, not ${describe(values.type)}.`,
        `Write ${only.use}.`,
        values,
      )
    return { type: held, args: [values.term] }
  },
  apply([values]) {
    if (values === undefined || values.is === 'none') return values ?? none('no_rows')
    const items = valuesIn(values)
    const [first] = items
    if (first === undefined) return none('no_rows')
    return items.length === 1 ? first : none('not_only', { given: items.length }, trialsOf(...items))
  },
}
export default only
