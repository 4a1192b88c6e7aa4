import { none, number } from '../datum.ts'
import { meanOf } from '../exact.ts'
import { type Formula, oneList, overNumbers } from '../formula.ts'

/** Sample standard deviation: denominator n - 1, two passes. One number has none. */
const sd: Formula = {
  name: 'sd',
  use: 'sd(run.time)',
  check: (args, complain) => oneList(args, complain, sd.use),
  apply: overNumbers((values, trials) => {
    if (values.some(({ over }) => over)) return none('bound', {}, trials)
    if (values.length < 2) return none('too_few', { needed: 2, given: values.length }, trials)
    const middle = meanOf(values.map(({ n }) => n))
    const squares = values.reduce((sum, { n }) => sum + (n - middle) ** 2, 0)
    return number(Math.sqrt(squares / (values.length - 1)), false, trials)
  }),
}
export default sd
