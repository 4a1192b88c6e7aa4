/** What has changed since an earlier time, and how the published figures judge it. */
import { round } from '../../../protocols/scoring/rounding.ts'
import type { Change, ScoreValue } from '../../../protocols/scoring/result.ts'
import { showDate } from '../../app/dates.ts'
import { tellNumber, tellUnit, tellValue } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import { tellReason } from './tell.ts'

type Figure = Change['figures'][number]

/** `more`, `less`, or `same` where what is shown is no difference; `open` where a bound leaves it open. */
export function direction(difference: number | null, decimals: number): string {
  if (difference === null) return 'open'
  if (round(difference, decimals) === 0) return 'same'
  return difference > 0 ? 'more' : 'less'
}

/** `3.1 s less than on 2 March 2026 (23.0 s), which is better.` and the sentence that the judgement came to. */
export function tellChange(change: Change, score: ScoreValue): string {
  const { decimals, unit } = score
  const size = change.difference === null ? null : Math.abs(change.difference)
  return say('result.change', {
    day: showDate(change.earlier.on),
    value: tellValue(change.earlier.value, decimals, unit, change.earlier.over),
    difference: tellValue(size, decimals, unit, change.differenceOver),
    direction: direction(change.difference, decimals),
    towards: change.towards ?? 'none',
    judgement: tellReason('sentence', change.sentence),
  })
}

/** One published figure: what it is, whom it describes, where it stands, and whether the change exceeds it. */
export function tellFigure(figure: Figure, score: ScoreValue): string {
  return say('result.figure', {
    statistic: figure.statistic,
    threshold: `${tellNumber(figure.threshold, score.decimals)} ${tellUnit(score.unit)}`.trim(),
    printed: figure.printed,
    population: figure.population,
    source: figure.source.replaceAll('_', ' '),
    provenance: figure.provenance,
    exceeded: figure.exceeded === null ? 'open' : figure.exceeded ? 'yes' : 'no',
  })
}
