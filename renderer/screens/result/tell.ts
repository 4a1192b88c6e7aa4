/** Scores and reasons in words: the codes are those of `protocols/scoring/reasons.ts`, in its five groups. */
import type { z } from 'zod'
import type { missing, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { shownWith } from '../../../protocols/scoring/rounding.ts'
import { tellUnit, tellValue } from '../../steps/tell.ts'
import { hasWords, say } from '../../words/index.ts'

export type Reason = z.infer<typeof missing>
export type ReasonGroup = 'missing' | 'norm' | 'other_hand' | 'caution' | 'sentence'

/** Codes inside a reason's values, such as an outcome, in words; names that an author gave lose their underscores. */
function worded(detail: Reason['detail']): Reason['detail'] {
  return Object.fromEntries(
    Object.entries(detail).map(([name, value]) => {
      const key = `result.detail.${name}.${value}`
      if (hasWords(key)) return [name, say(key)]
      return [name, typeof value === 'string' ? value.replaceAll('_', ' ') : value]
    }),
  )
}

/** A reason in words; a code that has none of its own is shown as it is. */
export function tellReason(group: ReasonGroup, reason: Reason | null): string {
  if (reason === null) return say('steps.no_value')
  const key = `result.${group}.${reason.code}`
  return hasWords(key) ? say(key, worded(reason.detail)) : say('result.reason_other', { code: reason.code })
}

export function tellScore(score: ScoreValue): string {
  return score.value === null
    ? tellReason('missing', score.missing)
    : tellValue(score.value, score.decimals, score.unit, score.over)
}

/** A value with the error of taking times by hand, where it has one: `18.4 ± 0.2 s`. */
export function tellMeasured(score: ScoreValue): string {
  const { value, uncertainty, decimals, unit } = score
  if (value === null || uncertainty === null) return tellScore(score)
  const shown = shownWith(value, uncertainty.half, decimals)
  const number = say('result.plus_minus', { value: shown.value.replace('-', '−'), half: shown.half })
  return tellUnit(unit) === '' ? number : say('steps.with_unit', { number, unit: tellUnit(unit) })
}

/** An error alone: `0.28 s`. */
export function tellHalf(half: number, decimals: number, unit: string): string {
  const number = shownWith(0, half, decimals).half
  return tellUnit(unit) === '' ? number : say('steps.with_unit', { number, unit: tellUnit(unit) })
}

/** A source by its number in the list at the end, `[3]`; one that isn't there as it is cited. */
export function tellSource(cite: string, { sources }: Result): string {
  const number = sources.findIndex((source) => source.cite === cite) + 1
  return number === 0 ? cite.replaceAll('_', ' ') : `[${number}]`
}
