/**
 * The one style of all figures: dark lines on their own paper, two greys, no other colour, nothing that a
 * reader of safe SVG refuses. A shape is a piece of SVG text; whoever draws puts shapes one after the other,
 * and what comes later covers what came before.
 */
export type Point = readonly [x: number, y: number]
export type Shape = string

/** The size every figure is drawn in; a screen scales it. */
const WIDTH = 480
const HEIGHT = 280

const INK = '#1a1a1a'
const FILLS = { none: 'none', paper: '#fff', light: '#ececec', mid: '#c8c8c8', ink: INK } as const
const LINES = { thick: 4.5, plain: 2.5, thin: 1.5, none: 0 } as const

export interface Style {
  readonly fill?: keyof typeof FILLS
  readonly line?: keyof typeof LINES
  readonly dashed?: boolean
}

/** A length or place as it is written: two decimals are finer than any screen. */
export const n = (value: number): string => String(Math.round(value * 100) / 100)
const at = ([x, y]: Point): string => `${n(x)} ${n(y)}`

function attributes({ fill = 'none', line = 'plain', dashed = false }: Style): string {
  const filled = fill === 'none' ? '' : ` fill="${FILLS[fill]}"`
  const stroked =
    line === 'plain' ? '' : line === 'none' ? ' stroke="none"' : ` stroke-width="${LINES[line]}"`
  return filled + stroked + (dashed ? ' stroke-dasharray="4 6"' : '')
}

export const path = (d: string, style: Style = {}): Shape => `<path d="${d}"${attributes(style)}/>`
export const line = (points: readonly Point[], style: Style = {}): Shape => path(polyline(points), style)
export const polygon = (points: readonly Point[], style: Style = {}): Shape =>
  path(`${polyline(points)} Z`, style)
export const curve = (points: readonly Point[], style: Style = {}): Shape => path(smooth(points), style)

export function box(
  x: number,
  y: number,
  width: number,
  height: number,
  style: Style & { readonly round?: number } = {},
) {
  const rounded = style.round === undefined ? '' : ` rx="${n(style.round)}"`
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}"${rounded}${attributes(style)}/>`
}

export const circle = ([x, y]: Point, r: number, style: Style = {}): Shape =>
  `<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}"${attributes(style)}/>`
export const ellipse = ([x, y]: Point, rx: number, ry: number, style: Style = {}): Shape =>
  `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}"${attributes(style)}/>`

/** Digits and units only: words would need a translation. A mirrored figure keeps them readable. */
export const label = ([x, y]: Point, text: string): Shape =>
  `<text x="${n(x)}" y="${n(y)}" text-anchor="middle" font-family="sans-serif" font-size="17" fill="${INK}" stroke="none">${text}</text>`

export const moved = (by: Point, ...shapes: readonly Shape[]): Shape =>
  `<g transform="translate(${at(by)})">${shapes.join('')}</g>`
export const turned = (degrees: number, about: Point, ...shapes: readonly Shape[]): Shape =>
  `<g transform="rotate(${n(degrees)} ${at(about)})">${shapes.join('')}</g>`

const polyline = (points: readonly Point[]): string => `M${points.map(at).join(' L')}`

/** A curve through all points (Catmull-Rom, written as cubic Béziers). */
function smooth(points: readonly Point[]): string {
  const [first] = points
  if (first === undefined) return ''
  const pieces = points.slice(1).map((to, index) => {
    const from = points[index] ?? to
    const before = points[index - 1] ?? from
    const after = points[index + 2] ?? to
    const c1: Point = [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6]
    const c2: Point = [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6]
    return `C${at(c1)} ${at(c2)} ${at(to)}`
  })
  return `M${at(first)} ${pieces.join(' ')}`
}

/** A point so far from another; 0 degrees is to the right, 90 degrees is up. */
export function away([x, y]: Point, length: number, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180
  return [x + length * Math.cos(angle), y - length * Math.sin(angle)]
}

const headAt = (tip: Point, degrees: number): Shape =>
  line([away(tip, 9, degrees + 152), tip, away(tip, 9, degrees - 152)], { line: 'plain' })

const direction = (from: Point, to: Point): number =>
  (Math.atan2(from[1] - to[1], to[0] - from[0]) * 180) / Math.PI

/** A straight or bowed arrow along its points; `both` has a head at each end. */
export function arrow(points: readonly Point[], style: Style & { readonly both?: boolean } = {}): Shape {
  const heads = [points, ...(style.both ? [points.toReversed()] : [])].flatMap((way) => {
    const [from, to] = way.slice(-2)
    return from && to ? [headAt(to, direction(from, to))] : []
  })
  return curve(points, style) + heads.join('')
}

/** An arrow round a centre, from one angle to another. */
export function turning(
  centre: Point,
  r: number,
  from: number,
  to: number,
  style: Style & { readonly both?: boolean } = {},
) {
  const steps = Math.max(2, Math.round(Math.abs(to - from) / 8))
  const points = Array.from({ length: steps + 1 }, (_, step) =>
    away(centre, r, from + ((to - from) * step) / steps),
  )
  return arrow(points, style)
}

/** A distance with its figure: a thin line with an end stroke at each end. */
export function distance(from: Point, to: Point, text: string, labelAt: Point): Shape {
  const across = direction(from, to) + 90
  const end = (point: Point) => line([away(point, 5, across), away(point, -5, across)], { line: 'thin' })
  return line([from, to], { line: 'thin' }) + end(from) + end(to) + label(labelAt, text)
}

/** The number of a step of a demonstration. */
const step = (centre: Point, number: number): Shape =>
  circle(centre, 12, { fill: 'paper', line: 'thin' }) + label([centre[0], centre[1] + 6], String(number))

export const right = ([x, y]: Point): Shape =>
  line(
    [
      [x - 10, y],
      [x - 2, y + 9],
      [x + 14, y - 10],
    ],
    { line: 'thick' },
  )
export const wrong = ([x, y]: Point): Shape =>
  line(
    [
      [x - 9, y - 9],
      [x + 9, y + 9],
    ],
    { line: 'thick' },
  ) +
  line(
    [
      [x - 9, y + 9],
      [x + 9, y - 9],
    ],
    { line: 'thick' },
  )

/** Where drawings stand beside each other: how high their fields are, and whether they are steps, from which on. */
interface Panels {
  readonly height?: number
  readonly firstStep?: number
}

/** Drawings side by side, each in a field of its own that begins at 0 0; what goes beyond a field isn't seen. */
export function panels(drawings: readonly (readonly Shape[])[], of: Panels = {}): Shape[] {
  const { height = HEIGHT, firstStep } = of
  const width = WIDTH / drawings.length
  return drawings.flatMap((shapes, index) => {
    const x = index * width
    const parting: Point[] = [
      [x, 16],
      [x, height - 16],
    ]
    return [
      `<svg x="${n(x)}" width="${n(width)}" height="${height}">${shapes.join('')}</svg>`,
      ...(index > 0 ? [line(parting, { line: 'thin', dashed: true })] : []),
      ...(firstStep === undefined ? [] : [step([x + 20, 22], index + firstStep)]),
    ]
  })
}

/** The drawings of a demonstration, numbered. */
export const steps = (drawings: readonly (readonly Shape[])[]): Shape[] => panels(drawings, { firstStep: 1 })

/** Drawings in two rows. */
export const twoRows = (
  upper: readonly (readonly Shape[])[],
  lower: readonly (readonly Shape[])[],
  numbered = false,
): Shape[] => [
  ...panels(upper, { height: 136, ...(numbered && { firstStep: 1 }) }),
  moved([0, 140], ...panels(lower, { height: 136, ...(numbered && { firstStep: upper.length + 1 }) })),
]

/** One figure of a protocol, as data: what it is called and says in words, and its shapes in order. */
export interface Figure {
  readonly title: string
  readonly words: string
  /** True where it shows one hand: it is drawn for the right one, and a screen mirrors it for the left. */
  readonly oneHand: boolean
  readonly shapes: readonly Shape[]
}
export type Figures = Readonly<Record<string, Figure>>

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

export function svgOf({ title, words, oneHand, shapes }: Figure): string {
  const hand = oneHand ? ' data-hand="right"' : ''
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img"${hand}>`,
    `  <title>${escaped(title)}</title>`,
    `  <desc>${escaped(words)}</desc>`,
    `  <rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    `  <g fill="none" stroke="${INK}" stroke-width="2.5" stroke-linecap="round" stroke-linejoin="round">`,
    ...shapes.map((shape) => `    ${shape}`),
    '  </g>',
    '</svg>',
    '',
  ].join('\n')
}

/** The way a thing takes through the air. */
export const lift = (from: Point, over: Point, to: Point): Shape =>
  arrow([from, over, to], { line: 'thin', dashed: true })

/** The ground or table top that what is drawn from the side stands on. */
export const floorLine = (y: number, from = 6, to = WIDTH - 6): Shape =>
  line([
    [from, y],
    [to, y],
  ])
