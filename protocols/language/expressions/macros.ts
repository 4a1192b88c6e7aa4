/** Going through a list: filter, map, all, exists, exists_one. */
import { bool, list, none, trialsOf, valuesIn } from './datum.ts'
import { logic } from './operations.ts'
import type { Term } from './term.ts'
import type { Datum } from './types.ts'

type MacroTerm = Extract<Term, { is: 'macro' }>

/** `within` evaluates a part of the macro with its name bound to an item. */
export function evaluateMacro(term: MacroTerm, of: Datum, within: (body: Term, item: Datum) => Datum): Datum {
  if (of.is === 'none') return of
  const items = valuesIn(of)
  switch (term.macro) {
    case 'map': {
      const chosen = term.where === null ? list(items) : kept(items, term.where, within)
      return chosen.is === 'list' ? list(chosen.items.map((item) => within(term.body, item))) : chosen
    }
    case 'filter':
      return kept(items, term.body, within)
    case 'all':
    case 'exists': {
      const decides = term.macro === 'exists'
      return items.reduce<Datum>(
        (so, item) => logic(decides, so, () => within(term.body, item)),
        bool(!decides),
      )
    }
    case 'exists_one':
      return one(items.map((item) => within(term.body, item)))
  }
}

/** The items that meet the condition. Where it can't be told of one, the whole list is missing. */
function kept(items: readonly Datum[], body: Term, within: (body: Term, item: Datum) => Datum): Datum {
  const found: Datum[] = []
  for (const item of items) {
    const met = within(body, item)
    if (met.is === 'none') return met
    if (met.is === 'bool' && met.bool) found.push(item)
  }
  return list(found)
}

function one(verdicts: readonly Datum[]): Datum {
  const trials = trialsOf(...verdicts)
  const met = verdicts.filter((verdict) => verdict.is === 'bool' && verdict.bool).length
  if (met > 1) return bool(false, trials)
  const missing = verdicts.find((verdict) => verdict.is === 'none')
  return missing?.is === 'none'
    ? none(missing.missing.code, missing.missing.detail, trials)
    : bool(met === 1, trials)
}
