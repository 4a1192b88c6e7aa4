import type { Outcome } from '../../language/model.ts'
import type { Found, FoundRow, GivenPass } from '../kind.ts'
import { climb } from './climb.ts'
import type { LadderFields } from './keys.ts'
import { levelsOf } from './levels.ts'

const nothing = (outcome: Outcome): FoundRow => ({ item: null, outcome, over: false })

/** Each level once: what its last presentation said. */
const judged = (given: readonly GivenPass[]): ReadonlyMap<string, boolean | null> =>
  new Map(given.map(({ item, verdict }) => [item, verdict]))

/**
 * The level that the ladder found. Where no level was accepted it lies beyond the last: for the least accepted one
 * that is a bound ("at least the last level"), for the greatest there is no value. A ladder that was cut off, or on
 * which a level has no answer, has found nothing: its row has the outcome of the trials there.
 */
export const row: Found['row'] = (section, items, given, { count, holds }) => {
  const fields = section.fields as unknown as LadderFields
  const last = given.at(-1)
  const turns = fields.turns === undefined ? 1 : count(fields.turns)
  if (last === undefined) return nothing('not_given')
  const cut = last.outcome === 'done' ? 'not_given' : last.outcome
  if (last.verdict === null || turns === null) return nothing(cut)
  const path = given.map(({ item }) => item)
  const levels = levelsOf(
    fields,
    items.map(({ id }) => id),
    path,
    holds,
  )
  if (climb(fields, levels, path, last.verdict, turns) !== null) return nothing(cut)
  const verdicts = judged(given)
  if ([...verdicts.values()].includes(null)) return nothing('not_given')
  const accepted = levels.filter((level) => verdicts.get(level) === true)
  const least = fields.finds === 'least-accepted'
  const item = (least ? accepted[0] : accepted.at(-1)) ?? null
  if (item !== null) return { item, outcome: 'done', over: false }
  return least ? { item: levels.at(-1) ?? null, outcome: 'limit', over: true } : nothing('limit')
}
