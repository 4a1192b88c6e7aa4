import { none, number } from '../datum.ts'
import { ascending, meanOf } from '../exact.ts'
import { type Formula, oneList, overNumbers } from '../formula.ts'

/** Mean after dropping the whole part of n times the share at each end: `trimmed(x, 0.2)`. */
const trimmed: Formula = {
  name: 'trimmed',
  use: 'trimmed(run.time, 0.2)',
  check(args, complain) {
    const [values, share] = args
    const constant =
      share?.term.is === 'constant' && share.term.datum.is === 'number' ? share.term.datum.n : null
    if (values === undefined || share === undefined || args.length !== 2)
      return complain(
        'wrong_arguments',
        'trimmed takes a list and the share to drop at each end.',
        `Write ${trimmed.use}.`,
      )
    if (constant === null || constant < 0 || constant >= 0.5)
      return complain(
        'wrong_arguments',
        'The share to drop is a number from 0 up to, but not including, 0.5.',
        `Write ${trimmed.use}.`,
        share,
      )
    const checked = oneList([values], complain, trimmed.use)
    return checked === null ? null : { type: checked.type, args: [...checked.args, share.term] }
  },
  apply([values, share]) {
    const part = share?.is === 'number' ? share.n : 0
    return overNumbers((readings, trials) => {
      if (readings.some(({ over }) => over)) return none('bound', {}, trials)
      const drop = Math.floor(readings.length * part + 1e-9)
      const kept = ascending(readings.map(({ n }) => n)).slice(drop, readings.length - drop)
      return number(meanOf(kept), false, trials)
    })([values ?? none('no_rows')])
  },
}
export default trimmed
