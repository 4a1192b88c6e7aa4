import type { Formula } from '../formula.ts'
import { checkPicking, pick } from '../picking.ts'

/** The first value, or the first n of them as a list in the order they were given. */
const first: Formula = {
  name: 'first',
  use: 'first(run.time) or first(run.time, 3)',
  check: (args, complain) => checkPicking(args, complain, first.use, true),
  apply: (args) => pick(args, (items, n) => items.slice(0, n)),
}
export default first
