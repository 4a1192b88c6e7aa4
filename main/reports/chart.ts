/**
 * One score over time as SVG text, drawn by a pure function: time to scale, hands told apart by shape and dash
 * and never by colour, a line only between results that were given the same way, bounds as open marks.
 */
import { scaleLinear, scaleUtc } from 'd3-scale'

interface ChartPoint {
  /** Civil date. */
  readonly on: string
  readonly value: number
  readonly over: boolean
  readonly joins: boolean
}
export interface ChartLine {
  readonly label: string
  /** In the order of time. */
  readonly points: readonly ChartPoint[]
}
export interface ChartWords {
  readonly axis: string
  tick(value: number): string
  day(on: string): string
}

const HEIGHT = 132
const EDGE = { left: 34, right: 74, top: 18, bottom: 22 }
const INK = '#1d2730'
const QUIET = '#586672'
const HAIR = '#c3ccd3'
/** One look a line: a dash and a mark. */
const DASHES = ['none', '5 3', '1.5 2.5', '8 3 1.5 3'] as const
const MARKS: readonly ((x: number, y: number) => string)[] = [
  (x, y) => `M${at(x - 3)} ${at(y)}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0z`,
  (x, y) => `M${at(x - 2.7)} ${at(y - 2.7)}h5.4v5.4h-5.4z`,
  (x, y) => `M${at(x)} ${at(y - 3.4)}l3.4 6h-6.8z`,
  (x, y) => `M${at(x)} ${at(y - 3.6)}l3.6 3.6l-3.6 3.6l-3.6 -3.6z`,
]

const at = (length: number): string => String(Math.round(length * 100) / 100)

const moment = (on: string) => new Date(`${on}T00:00:00Z`)

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escaped = (text: string) => text.replace(/[&<>"]/g, (one) => ENTITIES[one] ?? one)

const words = (x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end', colour: string) =>
  `<text x="${at(x)}" y="${at(y)}" text-anchor="${anchor}" fill="${colour}">${escaped(text)}</text>`

/** Labels at the ends of lines, moved apart where they would touch. */
function spread(wanted: readonly number[]): number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y)
  const placed: number[] = []
  let last = Number.NEGATIVE_INFINITY
  for (const { y, index } of order) {
    last = Math.max(y, last + 10)
    placed[index] = last
  }
  return placed
}

/**
 * @param width in the unit of the type size, which is 9
 * @returns null where there are no two days to draw
 */
export function chartOf(
  lines: readonly ChartLine[],
  { axis, tick, day }: ChartWords,
  width: number,
): string | null {
  const points = lines.flatMap((line) => line.points)
  const days = [...new Set(points.map((point) => point.on))].sort()
  const [first, last] = [days[0], days.at(-1)]
  if (first === undefined || last === undefined || first === last) return null
  const x = scaleUtc([moment(first), moment(last)], [EDGE.left, width - EDGE.right])
  const values = points.map((point) => point.value)
  const room = (Math.max(...values) - Math.min(...values)) * 0.15 || Math.abs(values[0] ?? 0) * 0.1 || 1
  const y = scaleLinear(
    [Math.min(...values) - room, Math.max(...values) + room],
    [HEIGHT - EDGE.bottom, EDGE.top],
  )
  const grid = y.ticks(3).map((value) => {
    const line = `<path d="M${EDGE.left} ${at(y(value))}H${width - EDGE.right}" stroke="${HAIR}" stroke-width="0.6"/>`
    return line + words(EDGE.left - 5, y(value) + 2.8, tick(value), 'end', QUIET)
  })
  const ends = [
    words(x(moment(first)), HEIGHT - 6, day(first), 'start', QUIET),
    words(x(moment(last)), HEIGHT - 6, day(last), 'end', QUIET),
  ]
  const labels = spread(lines.map((line) => y(line.points.at(-1)?.value ?? 0)))
  const drawn = lines.map((line, index) => {
    const placed = line.points.map((point) => ({ ...point, x: x(moment(point.on)), y: y(point.value) }))
    const path = placed
      .map((point, step) => `${step > 0 && point.joins ? 'L' : 'M'}${at(point.x)} ${at(point.y)}`)
      .join('')
    const dash = DASHES[index % DASHES.length]
    const mark = MARKS[index % MARKS.length] ?? (() => '')
    const marks = placed.map(
      (point) => `<path d="${mark(point.x, point.y)}" fill="${point.over ? 'white' : INK}" stroke="${INK}"/>`,
    )
    const end = placed.at(-1)
    const label = end ? words(end.x + 8, (labels[index] ?? end.y) + 2.8, line.label, 'start', INK) : ''
    return `<path d="${path}" fill="none" stroke="${INK}" stroke-width="1" stroke-dasharray="${dash}"/>${marks.join('')}${label}`
  })
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${HEIGHT}" width="${width}" height="${HEIGHT}" font-family="Libertinus Serif" font-size="9">${words(0, 9, axis, 'start', QUIET)}${grid.join('')}${ends.join('')}${drawn.join('')}</svg>`
}
