import { expect, test } from 'vitest'
import { type ChartLine, chartOf as drawn, type ChartWords } from '../../main/reports/chart.ts'

const chartOf = (lines: readonly ChartLine[], said: ChartWords) => drawn(lines, said, 520)

const words = { axis: 'Time, s', tick: String, day: (on: string) => on }

const point = (on: string, value: number, more: Partial<ChartLine['points'][number]> = {}) => ({
  on,
  value,
  over: false,
  joins: true,
  ...more,
})

const right: ChartLine = {
  label: 'right hand',
  points: [point('2026-01-01', 30), point('2026-02-01', 25), point('2026-03-01', 20)],
}

/** What each path of a line draws: its moves and its joins, in order. */
const strokes = (svg: string) =>
  [...svg.matchAll(/<path d="([^"]+)" fill="none"/g)].map((found) => (found[1] ?? '').replace(/[^ML]/g, ''))

/** Where a line's corners are. */
const corners = (svg: string) =>
  [...(/<path d="([^"]+)" fill="none"/.exec(svg)?.[1] ?? '').matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(
    (found) => [Number(found[1]), Number(found[2])],
  )

test('one day is no course: nothing is drawn', () => {
  expect(chartOf([], words)).toBeNull()
  expect(chartOf([{ label: 'right hand', points: [point('2026-01-01', 30)] }], words)).toBeNull()
  const two = [right, right].map((line) => ({ ...line, points: line.points.slice(0, 1) }))
  expect(chartOf(two, words)).toBeNull()
})

test('days are true to scale, and a larger value stands higher', () => {
  const places = corners(chartOf([right], words) ?? '')
  const [[x1 = 0, y1 = 0] = [], [x2 = 0, y2 = 0] = [], [x3 = 0, y3 = 0] = []] = places
  expect((x2 - x1) / (x3 - x1)).toBeCloseTo(31 / 59, 2)
  expect(y1).toBeLessThan(y2)
  expect(y2 - y1).toBeCloseTo(y3 - y2, 1)
})

test('a line joins only what was given the same way', () => {
  const broken = { ...right, points: right.points.map((one, index) => ({ ...one, joins: index !== 1 })) }
  expect(strokes(chartOf([broken], words) ?? '')).toEqual(['MML'])
  expect(strokes(chartOf([right], words) ?? '')).toEqual(['MLL'])
})

test('hands differ by dash and mark, never by colour alone', () => {
  const svg = chartOf([right, { ...right, label: 'left hand' }], words) ?? ''
  const dashes = [...svg.matchAll(/stroke-dasharray="([^"]+)"/g)].map((found) => found[1])
  expect(new Set(dashes).size).toBe(2)
  expect(new Set([...svg.matchAll(/fill="none" stroke="([^"]+)"/g)].map((found) => found[1])).size).toBe(1)
})

test('a bound is an open mark', () => {
  const bound = { ...right, points: [point('2026-01-01', 60, { over: true }), point('2026-02-01', 25)] }
  expect(chartOf([bound], words)?.match(/fill="white"/g)).toHaveLength(1)
  expect(chartOf([right], words)).not.toContain('fill="white"')
})

test('labels that would touch are moved apart', () => {
  const svg = chartOf([right, { ...right, label: 'left hand' }, { ...right, label: 'both' }], words) ?? ''
  const heights = [...svg.matchAll(/y="([\d.]+)" text-anchor="start" fill="#1d2730"/g)].map((found) =>
    Number(found[1]),
  )
  expect(heights).toHaveLength(3)
  const apart = heights.slice(1).map((height, index) => height - (heights[index] ?? 0))
  expect(Math.min(...apart)).toBeGreaterThanOrEqual(9.99)
})

test('words are text, whatever is in them', () => {
  const svg = chartOf([{ ...right, label: '<b>"&</b>' }], { ...words, axis: '</text><script>' }) ?? ''
  expect(svg).toContain('&lt;b&gt;&quot;&amp;&lt;/b&gt;')
  expect(svg).not.toContain('<script>')
})

test('the same points give the same drawing, also where all values are equal or zero', () => {
  expect(chartOf([right], words)).toBe(chartOf([right], words))
  for (const value of [0, 12]) {
    const flat = { ...right, points: [point('2026-01-01', value), point('2026-02-01', value)] }
    expect(chartOf([flat], words)).not.toMatch(/NaN|Infinity/)
  }
})
