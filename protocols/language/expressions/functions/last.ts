import type { Formula } from '../formula.ts'
import { checkPicking, pick } from '../picking.ts'

/** The last value, or the last n of them as a list in the order they were given. */
const last: Formula = {
  name: 'last',
  use: 'last(run.time) or last(run.time, 3)',
  check: (args, complain) => checkPicking(args, complain, last.use, true),
  apply: (args) => pick(args, (items, n) => items.slice(-n)),
}
export default last
