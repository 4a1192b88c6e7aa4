/** A score as an expression at a place sees it: one value, or a map by the loops that the place doesn't have. */
import { none, number } from '../language/expressions/datum.ts'
import { evaluateDatum } from '../language/expressions/evaluate.ts'
import type { Datum } from '../language/expressions/types.ts'
import type { Score } from '../language/model.ts'
import type { Place } from '../runner/events.ts'
import { listOf } from './outline.ts'
import { belongs, isRow } from './rows.ts'
import type { Working } from './standing.ts'

/** With several loops that the place doesn't have, maps within maps, outermost first. */
export function seenScore(working: Working, score: Score, place: Place): Datum {
  const wider = score.each.filter((loop) => !Object.hasOwn(place, loop))
  const here: Place = {}
  for (const loop of score.each) if (place[loop] !== undefined) here[loop] = place[loop]
  return mapped(working, score, here, wider)
}

function mapped(working: Working, score: Score, place: Place, wider: readonly string[]): Datum {
  const [loop, ...rest] = wider
  if (loop === undefined) return scoreAt(working, score, place)
  const entries = passesOf(working, score, loop, place).map(
    (pass) => [String(pass), mapped(working, score, { ...place, [loop]: pass }, rest)] as const,
  )
  return { is: 'map', entries: new Map(entries) }
}

/**
 * The passes of a loop that a score has values for: those that the rows it rests on have at this place, in the
 * order of the list.
 */
export function passesOf(working: Working, score: Score, loop: string, place: Place): (string | number)[] {
  const steps = working.outline.stepsUnder(score)
  const found = new Set<string | number>()
  for (const trial of working.standing.trials) {
    const pass = trial.place[loop]
    const counts = isRow(trial) && (steps.size === 0 || steps.has(trial.step))
    if (pass !== undefined && counts && belongs(trial.place, place)) found.add(pass)
  }
  const order = itemsOf(working, loop)
  return [...found].sort((a, b) =>
    typeof a === 'number' && typeof b === 'number'
      ? a - b
      : order.indexOf(String(a)) - order.indexOf(String(b)),
  )
}

/** Ids of the list that a loop goes through. */
export function itemsOf({ standing, outline }: Working, loop: string): string[] {
  const list = listOf(outline, loop)
  return list === null ? [] : (standing.protocol.lists[list] ?? []).map(({ id }) => id)
}

/** A score in one place that has all of its loops. It is worked out once. */
export function scoreAt(working: Working, score: Score, place: Place): Datum {
  const key = JSON.stringify([score.name, ...score.each.map((loop) => place[loop] ?? null)])
  const before = working.scores.get(key)
  if (before !== undefined) return before
  working.scores.set(key, none('circular', { score: score.name }))
  const datum = workedOut(working, score, place)
  working.scores.set(key, datum)
  return datum
}

function workedOut(working: Working, score: Score, place: Place): Datum {
  const scope = working.scope(place)
  if (score.needs !== null) {
    const needs = evaluateDatum(score.needs, scope)
    if (needs.is === 'none') return needs
    if (needs.is === 'bool' && !needs.bool) return none('needs_not_met', { score: score.name }, needs.trials)
  }
  const value = evaluateDatum(score.value, scope)
  if (value.is !== 'number' || score.range === null) return value
  const [low, high] = score.range
  if (value.n >= low && value.n <= high) return number(value.n, value.over, value.trials)
  return none('outside_range', { score: score.name, value: value.n, low, high }, value.trials)
}
