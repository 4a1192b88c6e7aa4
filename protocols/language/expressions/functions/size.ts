import { none, number, partsOf, trialsOf } from '../datum.ts'
import { describe } from '../units-of-types.ts'
import { type Formula, heldBy } from '../formula.ts'

/** How many items a list or map has, or how many characters (code points, as CEL counts) a text. */
const size: Formula = {
  name: 'size',
  use: 'size(run.rows)',
  check(args, complain) {
    const [value] = args
    if (value === undefined || args.length !== 1)
      return complain('wrong_arguments', 'size takes one value.', `Write ${size.use}.`)
    if (heldBy(value.type) === null && value.type.is !== 'text')
      return complain(
        'wrong_type',
        `size takes a list or a text, not ${describe(value.type)}.`,
        `Write ${size.use}.`,
        value,
      )
    return { type: { is: 'number', unit: '{count}' }, args: [value.term] }
  },
  apply([value]) {
    if (value === undefined || value.is === 'none') return value ?? none('no_rows')
    const length = value.is === 'text' ? [...value.text].length : partsOf(value).length
    return number(length, false, trialsOf(value))
  },
}
export default size
