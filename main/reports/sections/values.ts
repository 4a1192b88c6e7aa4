import type { Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { amount, listed, reasonWords, scoreAmount, trialNumbers, whereOf } from '../figures.ts'
import { type Block, figures, heading, narrow, note, table, wide } from '../page.ts'
import { say } from '../words.ts'

/** Scores in words: the value, or why there is none. */
export function valueWords(score: ScoreValue): string {
  if (score.value !== null) return amount(score.value, score.decimals, score.unit, score.over)
  return say('value.none')
}

/** Why a score has no value; empty where it has one. */
export const missingWords = (score: ScoreValue): string =>
  score.value === null && score.missing ? reasonWords('missing', score.missing) : ''

function otherHandWords(score: ScoreValue): string {
  const other = score.otherHand
  if (!other) return ''
  if (other.withheld) return reasonWords('other_hand', other.withheld)
  if (other.difference === null) return ''
  const apart = say('other_hand', {
    difference: other.difference === 0 ? 'same' : scoreAmount(score, Math.abs(other.difference)),
  })
  return other.ratio === null ? apart : say('other_hand.ratio', { apart, ratio: amount(other.ratio, 2, '1') })
}

function fromWords(score: ScoreValue, numbers: ReadonlyMap<string, number>): string {
  const trials = score.trials.flatMap((id) => numbers.get(id) ?? []).sort((a, b) => a - b)
  return trials.length ? say('from.trials', { count: trials.length, trials: trials.join(', ') }) : ''
}

/** The values as measured, before anything is compared with them. */
export function valuesOf(result: Result): Block[] {
  const shown = result.scores.filter((score) => score.shown)
  if (shown.length === 0) return [heading(say('scores')), note(say('scores.none'))]
  const numbers = trialNumbers(result)
  const beside = shown.some((score) => otherHandWords(score))
  const directions = new Map(shown.map((score) => [score.title, say('better', { better: score.better })]))
  const all = [...new Set(directions.values())]
  return [
    heading(say('scores')),
    table(
      say('scores'),
      [
        wide(say('column.score')),
        narrow(say('column.where')),
        figures(say('column.value')),
        narrow(say('column.trials')),
        ...(beside ? [wide(say('column.other_hand'))] : []),
      ],
      shown.map((score) => [
        score.title,
        whereOf(score) ?? say('where.whole'),
        valueWords(score),
        [fromWords(score, numbers), missingWords(score)].filter(Boolean).join(' '),
        ...(beside ? [otherHandWords(score)] : []),
      ]),
      { large: 2 },
    ),
    note(
      all.length === 1
        ? (all[0] ?? '')
        : listed([...directions].map(([title, words]) => say('value.named', { name: title, value: words }))),
    ),
  ]
}
