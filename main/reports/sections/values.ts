import { marksOf } from '../../../protocols/scoring/marks.ts'
import type { Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { uncertaintyNotes } from '../../../protocols/scoring/uncertainty/notes.ts'
import {
  amount,
  halfAmount,
  listed,
  measuredAmount,
  reasonWords,
  scoreAmount,
  trialNumbers,
  whereOf,
} from '../figures.ts'
import { type Block, fitting, heading, numeric, note, table, wide } from '../page.ts'
import { say } from '../words.ts'

/** Scores in words: the value, or that there is none. */
export function valueWords(score: ScoreValue): string {
  if (score.value !== null) return amount(score.value, score.decimals, score.unit, score.over)
  return say('value.none')
}

/** The same with the error of taking times by hand, where it has one. */
const measuredWords = (score: ScoreValue): string =>
  score.value === null || score.uncertainty === null
    ? valueWords(score)
    : measuredAmount(score.value, score.uncertainty.half, score.decimals, score.unit)

/** Why a score has no value; empty where it has one. */
export const missingWords = (score: ScoreValue): string =>
  score.value === null && score.missing ? reasonWords('missing', score.missing) : ''

/** Scores that have no value anywhere, all for one reason. */
export interface Valueless {
  readonly titles: readonly string[]
  readonly reason: string
}

/**
 * The shown scores, and apart from them those without a value in any place for one and the same reason: one
 * sentence says that of all of them.
 */
export function told(scores: readonly ScoreValue[]): { valued: ScoreValue[]; valueless: Valueless[] } {
  const shown = scores.filter((score) => score.shown)
  const reasonOf = (name: string): string | null => {
    const reasons = new Set(shown.filter((score) => score.score === name).map(missingWords))
    const [reason = ''] = reasons
    return reasons.size === 1 && reason ? reason : null
  }
  const apart = Map.groupBy(
    shown.filter((score) => reasonOf(score.score) !== null),
    (score) => reasonOf(score.score) ?? '',
  )
  return {
    valued: shown.filter((score) => reasonOf(score.score) === null),
    valueless: [...apart].map(([reason, these]) => ({
      reason,
      titles: [...new Set(these.map((score) => score.title))],
    })),
  }
}

function otherHandWords(score: ScoreValue): string {
  const other = score.otherHand
  if (!other) return ''
  if (other.withheld) return reasonWords('other_hand', other.withheld)
  if (other.difference === null) return ''
  const half = other.uncertainty?.difference ?? null
  const difference = say('other_hand', {
    difference: other.difference === 0 ? 'same' : scoreAmount(score, Math.abs(other.difference)),
  })
  const apart =
    half === null
      ? difference
      : say('other_hand.error', {
          apart: difference,
          half: halfAmount(half, score.decimals, score.unit),
          within: Math.abs(other.difference) <= half ? 'yes' : 'no',
        })
  return other.ratio === null ? apart : say('other_hand.ratio', { apart, ratio: amount(other.ratio, 2, '1') })
}

/** How the value came about, where every reader has to know it. */
export const markWords = (score: ScoreValue, { trials }: Result): string[] =>
  marksOf(score, trials).map((mark) => say(`mark.${mark}`))

function fromWords(score: ScoreValue, result: Result): string {
  const numbers = trialNumbers(result)
  const trials = score.trials.flatMap((id) => numbers.get(id) ?? []).sort((a, b) => a - b)
  if (trials.length === 0) return ''
  const from = say('from.trials', { count: trials.length, trials: trials.join(', ') })
  return [from, ...markWords(score, result)].join(', ')
}

/** Which way each score is better, said once where it is the same for all. */
function directionWords(scores: readonly ScoreValue[]): string {
  const directions = new Map(scores.map((score) => [score.title, say('better', { better: score.better })]))
  const all = new Set(directions.values())
  if (all.size === 1) return [...all].join('')
  return [...directions].map(([title, value]) => say('value.named', { name: title, value })).join(' ')
}

function valueTable(result: Result, scores: readonly ScoreValue[], beside: boolean): Block {
  return table(
    say('scores'),
    [
      wide(say('column.score')),
      fitting(
        say('column.where'),
        scores.map((score) => whereOf(score) ?? ''),
      ),
      numeric(say('column.value')),
      wide(say('column.trials')),
      ...(beside ? [wide(say('column.other_hand'))] : []),
    ],
    scores.map((score) => [
      score.title,
      whereOf(score) ?? say('where.whole'),
      measuredWords(score),
      [fromWords(score, result), missingWords(score)].filter(Boolean).join(': '),
      ...(beside ? [otherHandWords(score)] : []),
    ]),
    { large: 2 },
  )
}

/** The values as measured, before anything is compared with them. */
export function valuesOf(result: Result): Block[] {
  const { valued, valueless } = told(result.scores)
  const besides = new Set(valued.map(otherHandWords).filter(Boolean))
  const [only = ''] = besides
  // One reason for all is said once, below.
  const alike = besides.size === 1 && valued.every((score) => !score.otherHand || score.otherHand.withheld)
  const under = [
    valued.length ? directionWords(valued) : '',
    ...(alike ? [say('other_hand.same_for_all', { reason: only })] : []),
    ...uncertaintyNotes(valued, result.timing).map(({ code, detail }) => say(`uncertainty.${code}`, detail)),
    ...valueless.map(({ titles, reason }) => say('scores.missing', { scores: listed(titles), reason })),
  ].filter(Boolean)
  return [
    heading(say('scores')),
    ...(valued.length ? [valueTable(result, valued, besides.size > 0 && !alike)] : []),
    note(under.join(' ') || say('scores.none')),
  ]
}
