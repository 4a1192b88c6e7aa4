import { none, number } from '../datum.ts'
import { difference } from '../exact.ts'
import { type Formula, listOrNumbers, overNumbers } from '../formula.ts'

/** Greatest less least. */
const spread: Formula = {
  name: 'spread',
  use: 'spread(last(taps.count, 5))',
  check: (args, complain) => listOrNumbers(args, complain, spread.use),
  apply: overNumbers((values, trials) => {
    if (values.some(({ over }) => over)) return none('bound', {}, trials)
    const xs = values.map(({ n }) => n)
    return number(difference(Math.max(...xs), Math.min(...xs)), false, trials)
  }),
}
export default spread
