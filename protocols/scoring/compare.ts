/** A bare value with the norms of a protocol: no administration stands behind it. */
import type { AgeRange } from '../age.ts'
import { type ClientFacts, NOTHING_KNOWN, otherSide, type Side } from '../client.ts'
import type { NormColumn, Protocol, Score } from '../language/model.ts'
import { textOf, wordingFor } from '../language/words.ts'
import type { Place } from '../runner/events.ts'
import { type FigureHere, figuresHere } from './change.ts'
import { chosenHere } from './choosing.ts'
import { compareWithNorm } from './norms.ts'
import { listOf, outlineOf } from './outline.ts'
import type { NormComparison } from './result.ts'
import { scopeAt } from './scope.ts'

export interface Compared {
  readonly score: string
  readonly title: string
  readonly value: number
  readonly unit: string
  readonly decimals: number
  readonly better: Score['better']
  readonly norms: readonly NormComparison[]
  /** Published figures for the error of the measurement, as far as they apply to this hand. */
  readonly figures: readonly FigureHere[]
}

export interface CompareRequest {
  readonly protocol: Protocol
  /** Name of the score. */
  readonly score: string
  /** In the score's unit. */
  readonly value: number
  readonly age: AgeRange | null
  readonly sex: 'F' | 'M' | 'unknown'
  readonly hand: Side | null
  readonly dominant: Side | null
  readonly affected: Side | null
  /** What columns of the tables hold, such as an answer or years of schooling, and how conditions stood, by their names. */
  readonly told: Readonly<Record<string, string>>
}

/** Why nothing was compared; `detail` is for the sentence. */
export interface CompareProblem {
  readonly problem: 'no_such_score' | 'no_norms' | 'hand_needed' | 'value_not_a_number' | 'outside_range'
  readonly detail: Readonly<Record<string, string | number>>
}

/** An age as it is written on a command line, `34` or `7y5m`, in completed years; null where it is neither. */
export function readAge(written: string): AgeRange | null {
  const [, years, months = '0'] = /^(\d{1,3})(?:y(?:(\d{1,2})m)?)?$/.exec(written) ?? []
  if (years === undefined || Number(years) > 130 || Number(months) > 11) return null
  return { from: Number(years), to: Number(years) }
}

export function compareValue(request: CompareRequest): Compared | CompareProblem {
  const { protocol, value } = request
  const score = protocol.scores.find(({ name }) => name === request.score)
  const problem = problemOf(request, score)
  if (problem !== null || score === undefined)
    return problem ?? { problem: 'no_such_score', detail: { score: request.score } }
  const wording = wordingFor(protocol, null)
  const say = (text: Score['title']) => textOf(protocol, wording, text)
  const hand = handLoop(protocol, score) === undefined ? null : request.hand
  const { facts, place } = standIn(request, score)
  const conditions = conditionsTold(request)
  const standing = { protocol, facts, trials: [], conditions, orders: [] }
  const scope = scopeAt(standing, place)
  const { age, sex, dominant } = request
  const norms = protocol.norms
    .filter(({ of }) => of === score.name)
    .map((norm) =>
      compareWithNorm(norm, {
        protocol,
        score,
        hand,
        value,
        over: false,
        person: { age, isAgeImpossible: false, sex, dominant },
        conditions,
        deviations: { withheld: 0, caution: 0 },
        verified: new Map(),
        choose: (column) => toldOf(request, column) ?? chosenHere(column, { ...standing, place, hand }),
        say,
      }),
    )
  return {
    score: score.name,
    title: say(score.title),
    value,
    unit: score.unit,
    decimals: score.decimals,
    better: score.better,
    norms,
    figures: figuresHere({ protocol, score, value, scope, say }),
  }
}

function problemOf(
  { protocol, value, hand, score: name }: CompareRequest,
  score: Score | undefined,
): CompareProblem | null {
  if (score === undefined)
    return {
      problem: 'no_such_score',
      detail: { score: name, scores: protocol.scores.map((one) => one.name).join(', ') },
    }
  if (!Number.isFinite(value)) return { problem: 'value_not_a_number', detail: { score: name } }
  if (score.range !== null && (value < score.range[0] || value > score.range[1]))
    return { problem: 'outside_range', detail: { score: name, low: score.range[0], high: score.range[1] } }
  if (hand === null && handLoop(protocol, score) !== undefined)
    return { problem: 'hand_needed', detail: { score: name } }
  return protocol.norms.some(({ of }) => of === name)
    ? null
    : { problem: 'no_norms', detail: { score: name } }
}

const conditionsTold = ({ protocol, told }: CompareRequest): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(told).filter(([column]) => protocol.conditions.some(({ name }) => name === column)),
  )

const toldOf = ({ told }: CompareRequest, { column }: NormColumn): string | null =>
  (Object.hasOwn(told, column) ? told[column] : undefined) ?? null

const handLoop = (protocol: Protocol, score: Score): string | undefined =>
  score.each.find((loop) => listOf(outlineOf(protocol), loop) === 'hands')

/** True for a score that each hand has for itself. */
export const isOfOneHand = (protocol: Protocol, name: string): boolean =>
  protocol.scores.some((score) => score.name === name && handLoop(protocol, score) !== undefined)

/** What is said of the person, as facts; the arm that isn't named as affected is taken as unaffected. */
function standIn({ protocol, hand, dominant, affected }: CompareRequest, score: Score) {
  const arms = { ...NOTHING_KNOWN.arms }
  if (affected !== null) {
    arms[affected] = { ...arms[affected], status: 'affected' }
    arms[otherSide(affected)] = { ...arms[otherSide(affected)], status: 'unaffected' }
  }
  const facts: ClientFacts = { ...NOTHING_KNOWN, dominantBefore: dominant ?? 'unknown', arms }
  const loop = handLoop(protocol, score)
  const place: Place = loop === undefined || hand === null ? {} : { [loop]: hand }
  return { facts, place }
}
