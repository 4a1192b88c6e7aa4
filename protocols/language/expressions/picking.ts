/** What first, last, lowest and highest have in common: they pick rows. */
import { list, none, trialsOf, valuesIn } from './datum.ts'
import { type Complain, heldBy } from './formula.ts'
import { describe, type Typed } from './units-of-types.ts'
import type { Datum, Missing, Trials, ValueType } from './types.ts'

/** A list, and how many to pick as a bare number or a count; `single`: the number may be left out. */
export function checkPicking(args: readonly Typed[], complain: Complain, use: string, single: boolean) {
  const [values, howMany] = args
  if (values === undefined || args.length > 2 || (howMany === undefined && !single))
    return complain('wrong_arguments', 'This takes a list and how many values to pick.', `Write ${use}.`)
  const held = heldBy(values.type)
  if (held === null)
    return complain('wrong_type', `This takes a list, not ${describe(values.type)}.`, `Write ${use}.`, values)
  if (howMany === undefined) return { type: held, args: [values.term] }
  if (howMany.type.is !== 'number' || (howMany.type.unit !== null && howMany.type.unit !== '{count}'))
    return complain(
      'wrong_type',
      `How many is a whole number, not ${describe(howMany.type)}.`,
      `Write ${use}.`,
      howMany,
    )
  if (howMany.term.is === 'constant' && howMany.term.datum.is === 'number' && !isCount(howMany.term.datum.n))
    return complain('wrong_arguments', 'How many is a whole number from 1.', `Write ${use}.`, howMany)
  const type: ValueType = { is: 'list', of: held }
  return { type, args: [values.term, howMany.term] }
}

const isCount = (n: number): boolean => Number.isInteger(n) && n >= 1

/** `n` of the values, or the reason that they can't be picked: fewer than `n` give none. A picked value may be missing. */
export function pick(
  args: readonly Datum[],
  choose: (items: readonly Datum[], n: number) => readonly Datum[] | Refusal,
): Datum {
  const [values, howMany] = args
  if (values === undefined || values.is === 'none') return values ?? none('no_rows')
  if (howMany?.is === 'none') return howMany
  const n = howMany?.is === 'number' ? howMany.n : 1
  const items = valuesIn(values)
  const trials = trialsOf(...items)
  if (!isCount(n) || (howMany?.is === 'number' && howMany.over))
    return none('not_a_count', { given: n }, trials)
  if (items.length === 0) return none('no_rows')
  if (items.length < n) return none('too_few', { needed: n, given: items.length }, trials)
  const chosen = choose(items, n)
  if ('code' in chosen) return none(chosen.code, chosen.detail, trials)
  const [one] = chosen
  if (howMany === undefined) return one ?? none('no_rows')
  return list(chosen)
}
type Refusal = Missing

/**
 * The `n` lowest (or highest) of numbers, in that order. A bound among them is refused where it could belong on
 * the other side of the cut. The values not picked were looked at too, so each picked one rests on them all.
 */
export function pickByRank(args: readonly Datum[], highest: boolean): Datum {
  return pick(args, (items, n) => {
    const missing = items.find((item) => item.is === 'none')
    if (missing?.is === 'none') return missing.missing
    const numbers = items.filter((item) => item.is === 'number')
    const sign = highest ? -1 : 1
    const ranked = [...numbers].sort((a, b) => sign * (a.n - b.n) || sign * (Number(a.over) - Number(b.over)))
    const picked = ranked.slice(0, n)
    const left = ranked.slice(n)
    // Of the lowest, a picked bound may in truth be higher than what was left; of the highest, a left bound may be.
    const open = highest
      ? left.some((item) => item.over)
      : left.length > 0 && picked.some((item) => item.over)
    if (open) return { code: 'bound', detail: {} }
    const trials: Trials = trialsOf(...numbers)
    return picked.map((item) => ({ ...item, trials }))
  })
}
