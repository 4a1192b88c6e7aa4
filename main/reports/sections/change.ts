import type { ChangeFigure } from '../../../protocols/language/model.ts'
import type { Change, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { amount, day, reasonWords, scoreAmount, whereOf } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import type { Names } from '../names.ts'
import { type Block, heading, lines, note, table, wide } from '../page.ts'
import { say } from '../words.ts'
import { conditionWords } from './norms.ts'
import { valueWords } from './values.ts'

type Figure = Change['figures'][number]

const placeWords = (score: ScoreValue) =>
  [score.title, whereOf(score)].filter((one) => one !== null).join(', ')

function differenceWords(score: ScoreValue, change: Change): string {
  const { difference, earlier, towards } = change
  const direction =
    difference === null ? 'open' : difference === 0 ? 'same' : difference > 0 ? 'more' : 'less'
  const size = difference === null ? 0 : Math.abs(difference)
  return say('change.difference', {
    where: placeWords(score),
    now: valueWords(score),
    before: amount(earlier.value, score.decimals, score.unit, earlier.over),
    day: day(earlier.on),
    direction,
    difference: amount(size, score.decimals, score.unit, change.differenceOver),
    towards: towards ?? 'none',
    sentence: reasonWords('change_sentence', change.sentence),
  })
}

function figureWords(score: ScoreValue, figure: Figure, names: Names): string {
  const exceeded = figure.exceeded === null ? 'open' : figure.exceeded ? 'yes' : 'no'
  const told = say('change.figure', {
    statistic: figure.statistic,
    threshold: figure.threshold === null ? say('unknown') : scoreAmount(score, figure.threshold),
    printed: figure.printed,
    population: figure.population,
    n: figure.n ?? 'none',
    cite: names.cite(figure.source),
    provenance: figure.provenance,
    exceeded,
  })
  return [told, ...figure.cautions.map((caution) => cautionWords(caution, names))].join(' ')
}

function cautionWords(caution: Change['cautions'][number], names: Names): string {
  const condition = caution.detail['condition']
  const worded = typeof condition === 'string' ? conditionWords(names, condition, caution.detail) : {}
  return reasonWords('change_caution', caution, worded)
}

/** Each shown score beside the last time, with every published figure for its error that applies. */
export function changeOf(result: Result, names: Names): Block[] {
  const scores = result.scores.filter((score) => score.shown && score.change.length > 0)
  if (scores.length === 0) return []
  return [
    heading(say('change')),
    ...scores.flatMap((score) =>
      score.change.flatMap((change) => [
        ...lines([differenceWords(score, change)]),
        ...[
          ...change.cautions.map((caution) => cautionWords(caution, names)),
          ...change.figures.map((figure) => figureWords(score, figure, names)),
        ].map(note),
      ]),
    ),
  ]
}

/** 1.96 standard errors of measurement, from what was published; a difference of two has the square root of two more. */
function halfWidth(figure: ChangeFigure, value: number): number | null {
  const size = figure.unit === '%' ? (Math.abs(value) * figure.value) / 100 : figure.value
  if (figure.statistic === 'SEM') return 1.96 * size
  if (figure.statistic === 'MDC95') return size / Math.SQRT2
  return null
}

function errorRow(input: ReportInput, names: Names, figure: ChangeFigure): string[] {
  const { result, protocol } = input
  const intervals = result.scores.flatMap((score) => {
    if (score.score !== figure.of || !score.shown || score.value === null || score.over) return []
    const half = halfWidth(figure, score.value)
    if (half === null) return []
    const [low, high] = [score.value - half, score.value + half].map((end) => scoreAmount(score, end))
    return [
      say('error.interval', {
        where: whereOf(score) ?? say('where.whole'),
        low: low ?? '',
        high: high ?? '',
      }),
    ]
  })
  const seen = protocol.sources.find((source) => source.id === figure.source)?.seen ?? 'memory'
  const printed = amount(figure.value, 2, figure.unit).replace(/\.?0+(?=\D*$)/, '')
  const people = say('error.people', {
    population: names.text(figure.population),
    n: figure.n ?? 'none',
    cite: names.cite(figure.source),
  })
  if (intervals.length === 0) return []
  return [
    say('error.figure', { statistic: figure.statistic, printed, provenance: seen }),
    people,
    intervals.join('; '),
  ]
}

/** The error of a single value by each published figure: the other of the two intervals that a value has. */
export function errorOf(input: ReportInput, names: Names): Block[] {
  const rows = input.protocol.change
    .map((figure) => errorRow(input, names, figure))
    .filter((row) => row.length)
  if (rows.length === 0) return []
  const columns = [wide(say('column.figure')), wide(say('column.people')), wide(say('column.interval'))]
  return [heading(say('error'), say('error.hint')), table(say('error'), columns, rows)]
}
