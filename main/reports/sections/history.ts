import { shownValue } from '../../../protocols/scoring/rounding.ts'
import { type ChartLine, chartOf } from '../chart.ts'
import { amount, day, plain, unitWords } from '../figures.ts'
import type { ReportInput, Series } from '../input.ts'
import { type Block, heading } from '../page.ts'
import { say } from '../words.ts'

const placeWords = (place: Readonly<Record<string, string>>): string =>
  Object.values(place)
    .map((pass) => (pass === 'right' || pass === 'left' ? say('where.hand', { hand: pass }) : plain(pass)))
    .join(', ') || say('where.whole')

function linesOf(series: Series): ChartLine[] {
  const byPlace = Map.groupBy(series.points, (point) => placeWords(point.place))
  return [...byPlace].flatMap(([label, points]) => {
    const valued = points.flatMap(({ on, value, over, joins }) =>
      value === null ? [] : [{ on, value, over, joins }],
    )
    return valued.length ? [{ label, points: valued.sort((a, b) => (a.on < b.on ? -1 : 1)) }] : []
  })
}

/** What the chart shows, in words. */
function described(series: Series, lines: readonly ChartLine[]): string {
  const told = lines.map((line) => {
    const points = line.points.map((point) =>
      say('history.point', {
        value: amount(point.value, series.decimals, '1', point.over),
        day: day(point.on),
      }),
    )
    return say('history.series', { where: line.label, points: points.join(', ') })
  })
  const unit = unitWords(series.unit)
  return say('history.chart', { title: series.title, unit, series: told.join('; ') })
}

/** Two charts stand side by side; one has the page's width. */
const WHOLE = 520
const HALF = 253

/** A chart for each score of this test that was given on more than one day. */
export function historyOf({ history, result }: ReportInput): Block[] {
  const shown = new Set(result.scores.filter((score) => score.shown).map((score) => score.score))
  const drawn = history
    .filter((series) => shown.has(series.score))
    .map((series) => ({ series, lines: linesOf(series) }))
    .filter(({ lines }) => new Set(lines.flatMap((line) => line.points.map((point) => point.on))).size > 1)
  const width = drawn.length > 1 ? HALF : WHOLE
  const pictures = drawn.flatMap(({ series, lines }) => {
    const axis = say('history.axis', { title: series.title, unit: unitWords(series.unit) })
    const svg = chartOf(lines, { axis, tick: tickWords, day }, width)
    return svg ? [{ svg, alt: described(series, lines) }] : []
  })
  const [first] = drawn
  if (!first) return []
  const alike = drawn.every(({ series }) => series.better === first.series.better)
  const better = alike ? first.series.better : 'none'
  return [heading(say('history'), say('history.hint', { better })), { block: 'pictures', pictures }]
}

const tickWords = (value: number): string =>
  shownValue(value, 2)
    .replace(/\.?0+$/, '')
    .replace('-', '−')
