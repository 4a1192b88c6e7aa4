import * as fc from 'fast-check'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { civilDay, momentOf } from '../../renderer/charts/dates.ts'
import { NormStrip } from '../../renderer/charts/norm-strip.tsx'
import { apart, drawn, runs, type Series } from '../../renderer/charts/series.ts'
import { TimeChart } from '../../renderer/charts/time-chart.tsx'
import type { ScoreHistory } from '../../renderer/screens/history/score-chart.tsx'
import { describe as describeChart, seriesOf } from '../../renderer/screens/history/series-of.ts'

const id = (n: number): string => `00000000-0000-7000-8000-00000000000${n}`

const point = (
  n: number,
  on: string,
  value: number | null,
  more: Partial<ScoreHistory['points'][number]> = {},
) => ({
  administration: id(n),
  at: `${on}T10:00:00+01:00`,
  on,
  place: { hand: 'right' },
  value,
  over: false,
  version: '1.0.0',
  joins: true,
  deviations: 0,
  ...more,
})

const HISTORY: ScoreHistory = {
  score: 'time',
  title: 'First run',
  unit: 's',
  decimals: 1,
  better: 'lower',
  points: [
    point(1, '2026-01-10', 24.31),
    point(2, '2026-02-10', 22.05),
    point(3, '2026-08-10', 19.96, { joins: false }),
    point(1, '2026-01-10', 30.2, { place: { hand: 'left' } }),
    point(2, '2026-02-10', null, { place: { hand: 'left' } }),
    point(3, '2026-08-10', 60, { place: { hand: 'left' }, over: true }),
  ],
}

const chart = (series: readonly Series[]): string =>
  renderToStaticMarkup(
    <TimeChart
      series={series}
      title="Title"
      description="Description"
      unit="s"
      showValue={(value) => value.toFixed(1)}
      showDate={(date) => date.toISOString().slice(0, 10)}
    />,
  )

const days = (from: string, to: string): number =>
  (civilDay(to).getTime() - civilDay(from).getTime()) / 86_400_000

describe('The chart of one score over time', () => {
  const series = seriesOf(HISTORY)

  it('has one line a hand, the right one first', () => {
    expect(series.map(({ id: each, label }) => [each, label])).toEqual([
      ['right', 'Right hand'],
      ['left', 'Left hand'],
    ])
  })

  it('joins only results that were given the same way, and none across a missing value', () => {
    const [right, left] = series
    expect(runs(right as Series).map((run) => run.map(({ value }) => value))).toEqual([
      [24.31, 22.05],
      [19.96],
    ])
    expect(runs(left as Series).map((run) => run.map(({ value }) => value))).toEqual([[30.2], [60]])
  })

  it('says in sentences what it shows: count, first and last value with their days, breaks', () => {
    const words = describeChart(HISTORY, series)
    expect(words).toContain(
      'Right hand: 3 values, from 24.3 s on 10 January 2026 to 20.0 s on 10 August 2026',
    )
    expect(words).toContain('broken once')
    expect(words).toContain('Left hand: 2 values, from 30.2 s on 10 January 2026 to at least 60.0 s')
    expect(chart(series)).toContain('<desc')
  })

  it('tells the hands apart by shape and by line, not by colour', () => {
    const drawing = chart(series)
    expect(drawing).toContain('<circle')
    expect(drawing).toContain('<rect')
    expect(drawing).toMatch(/chart-series-0[\s\S]*chart-series-1/)
  })

  it('keeps gaps in time true to scale', () => {
    const xs = [...chart([series[0] as Series]).matchAll(/<circle cx="([\d.]+)"/g)].map((match) =>
      Number(match[1]),
    )
    const [first = 0, second = 0, third = 0] = xs
    const expected = days('2026-01-10', '2026-02-10') / days('2026-02-10', '2026-08-10')
    expect((second - first) / (third - second)).toBeCloseTo(expected, 2)
  })

  it('marks a bound apart from a value', () => {
    expect(chart(series)).toContain('chart-over')
    expect(chart([series[0] as Series])).not.toContain('chart-over')
  })

  it('draws no number that is none, whatever the values', () => {
    const value = fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true }))
    fc.assert(
      fc.property(fc.array(value, { maxLength: 12 }), (values) => {
        const points = values.map((each, index) => ({
          id: String(index),
          at: new Date(2026, 0, 1 + index * 9),
          value: each,
          over: false,
          joins: true,
        }))
        const drawing = chart([{ id: 'right', label: 'Right', points }])
        expect(drawing).not.toMatch(/NaN|Infinity/)
        const marks = drawn({ id: '', label: '', points }).length
        expect([...drawing.matchAll(/<circle/g)].length).toBe(marks === 0 ? 0 : marks + 1)
      }),
    )
  })

  it('moves labels apart that would lie on each other, in their order and within the chart', () => {
    expect(apart([100, 104], 20, 0, 300)).toEqual([100, 120])
    expect(apart([290, 295], 20, 0, 300)).toEqual([280, 300])
  })

  it('stands on the clock’s moment, or on the day where the date was put right', () => {
    expect(momentOf('2026-03-02T09:30:00+01:00', '2026-03-02').toISOString()).toBe('2026-03-02T08:30:00.000Z')
    expect(momentOf('2026-03-02T09:30:00+01:00', '2026-02-27').getDate()).toBe(27)
  })
})

const strip = (value: number, over = false): string =>
  renderToStaticMarkup(
    <NormStrip
      value={value}
      over={over}
      mean={19}
      sd={2.5}
      title="Title"
      description="Description"
      showValue={(each) => each.toFixed(1)}
      showStep={(step) => `step ${step}`}
    />,
  )

describe('The strip of a norm group', () => {
  it('shows a value where it lies, however far from the group', () => {
    for (const value of [0, 19, 25, 400]) {
      expect(strip(value)).toContain(value.toFixed(1))
      expect(strip(value)).not.toMatch(/NaN|Infinity/)
    }
  })

  it('says in words that a value is a bound', () => {
    expect(strip(60, true)).toContain('≥')
  })
})
