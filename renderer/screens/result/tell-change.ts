/** What has changed since an earlier time, and how the published figures judge it. */
import { round } from '../../../protocols/scoring/rounding.ts'
import type { Change, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { showDate } from '../../app/dates.ts'
import { tellPasses } from '../../steps/place-words.ts'
import { tellUnit, tellValue } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import { tellReason, tellSource } from './tell.ts'

type Figure = Change['figures'][number]

/** `more`, `less`, or `same` where what is shown is no difference; `open` where a bound leaves it open. */
export function direction(difference: number | null, decimals: number): string {
  if (difference === null) return 'open'
  if (round(difference, decimals) === 0) return 'same'
  return difference > 0 ? 'more' : 'less'
}

/** `Right hand: 3.1 s less than on 2 March 2026 (23.0 s), which is better.` and what the judgement came to. */
export function tellChange(change: Change, score: ScoreValue): string {
  const { decimals, unit } = score
  const size = change.difference === null ? null : Math.abs(change.difference)
  return say('result.change', {
    place: tellPasses(score.passes) || 'none',
    day: showDate(change.earlier.on),
    value: tellValue(change.earlier.value, decimals, unit, change.earlier.over),
    difference: tellValue(size, decimals, unit, change.differenceOver),
    direction: direction(change.difference, decimals),
    towards: change.towards ?? 'none',
    judgement: tellReason('sentence', change.sentence),
  })
}

/** A published figure as printed: `MDC95 6.2 s`. */
export function figureWords({ statistic, printed }: Figure): string {
  const [number = '', unit = ''] = printed.split(' ')
  return [statistic, number, tellUnit(unit)].filter(Boolean).join(' ')
}

/** Whom a figure was gathered on, how many, and by which of the sources at the end. */
export function peopleWords(figure: Figure, result: Result): string {
  return say('result.figure_people', {
    population: figure.population,
    n: figure.n ?? 'none',
    source: tellSource(figure.source, result),
    provenance: figure.provenance,
  })
}

/** Whether the change is larger than a figure's threshold; nothing where the figure isn't for this place. */
export function exceededWords(figure: Figure | null, score: ScoreValue): string {
  if (figure === null) return ''
  return say('result.exceeded', {
    threshold: figure.threshold === null ? 'none' : tellValue(figure.threshold, score.decimals, score.unit),
    exceeded: figure.exceeded === null ? 'open' : figure.exceeded ? 'yes' : 'no',
  })
}
