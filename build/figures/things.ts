/** Furniture and kit, as plain shapes. Lengths are in the units of the drawing. */
import { armFromAbove, fromAbove } from './body.ts'
import { handFromAbove, type Pose } from './hand-from-above.ts'
import { box, circle, curve, ellipse, line, moved, type Point, polygon, type Shape, turned } from './pen.ts'

/** A client at a table, from above: the table's near edge at `EDGE`, the middle of the body at `MIDDLE`. */
export const SCALE = 4
const MIDDLE = 240
const EDGE = 188
const BODY: Point = [MIDDLE, 266]

/** How far a point on the table is from its edge and from the midline, in centimetres, to the right and away. */
export const onTable = (right: number, fromEdge: number): Point => [
  MIDDLE + right * SCALE,
  EDGE - fromEdge * SCALE,
]

export interface AtTable {
  /** Where the wrist of the hand under test is, in centimetres from midline and edge. */
  readonly hand: Point
  readonly to?: number
  readonly pose?: Pose
  /** Where the other wrist is; on the lap where it isn't said. */
  readonly other?: Point
  readonly midline?: boolean
}

export const table = (): Shape => box(14, 10, 452, EDGE - 10, { fill: 'light', round: 3 })

/** What lies on the table comes between the table and the client: the arms reach over it. */
export function clientAt({ hand, to = 90, pose = 'resting', other, midline = false }: AtTable): Shape {
  const wrist = onTable(...hand)
  const lap = other === undefined
  const otherWrist = lap ? ([MIDDLE - 15 * SCALE, 214] as const) : onTable(...other)
  const otherArm =
    armFromAbove(BODY, SCALE, -1, otherWrist, lap ? 7 : 6) +
    handFromAbove({ wrist: otherWrist, to: lap ? 8 : 90, scale: SCALE * 0.8, pose: 'resting', left: true })
  return [
    ...(midline
      ? [
          line(
            [
              [MIDDLE, 14],
              [MIDDLE, 236],
            ],
            { line: 'thin', dashed: true },
          ),
        ]
      : []),
    otherArm,
    armFromAbove(BODY, SCALE, 1, wrist),
    handFromAbove({ wrist, to, scale: SCALE * 0.85, pose }),
    fromAbove(BODY, SCALE),
  ].join('')
}

/** The table's top from the side, from one end to the other, and its legs down to the floor. */
export const tableFromSide = (x: number, y: number, width: number, floor: number): Shape =>
  box(x, y, width, 6, { fill: 'light' }) +
  line([
    [x + 14, y + 6],
    [x + 14, floor],
  ]) +
  line([
    [x + width - 14, y + 6],
    [x + width - 14, floor],
  ])

/** A round dial with its needle. */
export const dial = (at: Point, r: number): Shape =>
  circle(at, r, { fill: 'paper' }) +
  line([at, [at[0] + r * 0.5, at[1] - r * 0.55]]) +
  [-90, 0, 90]
    .map((angle) =>
      turned(
        angle,
        at,
        line(
          [
            [at[0], at[1] - r * 0.78],
            [at[0], at[1] - r * 0.95],
          ],
          { line: 'thin' },
        ),
      ),
    )
    .join('')

/** A hand dynamometer, upright: two posts, the handle that is squeezed towards the client's palm, the dial on top. */
export const dynamometer = (at: Point, k: number): Shape =>
  moved(
    at,
    box(-20 * k, -84 * k, 12 * k, 168 * k, { fill: 'mid', round: 5 * k }),
    box(10 * k, -84 * k, 14 * k, 168 * k, { fill: 'mid', round: 6 * k }),
    line([
      [-14 * k, -70 * k],
      [17 * k, -70 * k],
    ]),
    line([
      [-14 * k, 70 * k],
      [17 * k, 70 * k],
    ]),
    dial([0, -112 * k], 30 * k),
  )

/** A pinch gauge whose pads are at `at`; it comes from the left. */
export const pinchGauge = (at: Point, k: number): Shape =>
  moved(
    at,
    box(-150 * k, -6 * k, 166 * k, 4.5 * k, { fill: 'mid' }),
    box(-150 * k, 1.5 * k, 166 * k, 4.5 * k, { fill: 'mid' }),
    dial([-180 * k, 0], 36 * k),
  )

export const cube = ([x, y]: Point, side: number): Shape =>
  box(x - side / 2, y - side / 2, side, side, { fill: 'mid' })
export const peg = (at: Point, long: number, thick: number, degrees = 0): Shape =>
  turned(
    degrees,
    at,
    box(at[0] - thick / 2, at[1] - long / 2, thick, long, { fill: 'mid', round: thick / 3 }),
  )

/** Rows and columns of holes, each with or without its peg. */
export function holes(at: Point, rows: number, gap: number, r: number, filled = false): Shape {
  const offset = ((rows - 1) * gap) / 2
  return Array.from({ length: rows * rows }, (_, index) => {
    const place: Point = [
      at[0] - offset + (index % rows) * gap,
      at[1] - offset + Math.floor(index / rows) * gap,
    ]
    return circle(place, r, { fill: filled ? 'mid' : 'paper' })
  }).join('')
}

/** Loose pegs as they lie in a dish. */
export function loosePegs(at: Point, spread: number, long: number, thick: number): Shape {
  const places = [
    [-0.5, -0.5, 20],
    [0.1, -0.6, 80],
    [0.6, -0.3, 140],
    [-0.6, 0.1, 100],
    [0, 0, 45],
    [0.5, 0.2, 10],
    [-0.4, 0.6, 60],
    [0.1, 0.55, 160],
    [0.55, 0.65, 95],
  ]
  return places
    .map(([x = 0, y = 0, a]) => peg([at[0] + x * spread, at[1] + y * spread], long, thick, a))
    .join('')
}

/** A can from the side or, `above`, its round lid. */
export const can = ([x, y]: Point, width: number, height: number): Shape =>
  box(x - width / 2, y - height, width, height, { fill: 'mid', round: 3 }) +
  line(
    [
      [x - width / 2, y - height + 6],
      [x + width / 2, y - height + 6],
    ],
    { line: 'thin' },
  )
export const canFromAbove = (at: Point, r: number): Shape =>
  circle(at, r, { fill: 'mid' }) + circle(at, r * 0.78, { line: 'thin' })

export const clip = ([x, y]: Point, k: number, degrees = 0): Shape =>
  turned(
    degrees,
    [x, y],
    curve(
      [
        [x - 3 * k, y + 6 * k],
        [x - 3 * k, y - 6 * k],
        [x, y - 9 * k],
        [x + 3 * k, y - 6 * k],
        [x + 3 * k, y + 7 * k],
        [x + 1 * k, y + 9 * k],
        [x - 1 * k, y + 6 * k],
        [x - 1 * k, y - 4 * k],
      ],
      { line: 'thin' },
    ),
  )
export const spoon = ([x, y]: Point, k: number, degrees = 0): Shape =>
  turned(
    degrees,
    [x, y],
    ellipse([x, y - 10 * k], 4 * k, 6.5 * k, { fill: 'mid' }),
    line([
      [x, y - 3.5 * k],
      [x, y + 17 * k],
    ]),
  )
export const pencil = ([x, y]: Point, long: number, thick: number, degrees = 0): Shape =>
  turned(
    degrees,
    [x, y],
    polygon(
      [
        [x - thick / 2, y + long / 2],
        [x - thick / 2, y - long / 2 + thick],
        [x, y - long / 2 - thick],
        [x + thick / 2, y - long / 2 + thick],
        [x + thick / 2, y + long / 2],
      ],
      { fill: 'mid' },
    ),
  )
export const key = ([x, y]: Point, k: number): Shape =>
  circle([x, y - 9 * k], 7 * k, { fill: 'mid' }) +
  circle([x, y - 11 * k], 1.8 * k, { fill: 'paper', line: 'thin' }) +
  polygon(
    [
      [x - 1.6 * k, y - 2.4 * k],
      [x - 1.6 * k, y + 18 * k],
      [x + 1.6 * k, y + 18 * k],
      [x + 5.5 * k, y + 18 * k],
      [x + 5.5 * k, y + 14 * k],
      [x + 1.6 * k, y + 14 * k],
      [x + 1.6 * k, y + 11 * k],
      [x + 4.6 * k, y + 11 * k],
      [x + 4.6 * k, y + 7 * k],
      [x + 1.6 * k, y + 7 * k],
      [x + 1.6 * k, y - 2.4 * k],
    ],
    { fill: 'mid' },
  )
export const cup = ([x, y]: Point, k: number, handle: 1 | -1 = 1): Shape =>
  box(x - 10 * k, y - 22 * k, 20 * k, 22 * k, { fill: 'light', round: 2 * k }) +
  curve([
    [x + handle * 10 * k, y - 18 * k],
    [x + handle * 18 * k, y - 16 * k],
    [x + handle * 18 * k, y - 7 * k],
    [x + handle * 10 * k, y - 5 * k],
  ])

/** A stand on the table: two posts and a bar between them. */
export const stand = (from: number, to: number, bar: number, foot: number): Shape =>
  line([
    [from, bar - 10],
    [from, foot],
  ]) +
  line([
    [to, bar - 10],
    [to, foot],
  ]) +
  line([
    [from, bar],
    [to, bar],
  ])

/** A screen seen from its edge, and the line of sight that ends at it. */
export const screen = (x: number, from: number, to: number, eye: Point): Shape =>
  box(x - 3, from, 6, to - from, { fill: 'ink' }) +
  line([eye, [x - 6, from + (to - from) * 0.35]], { line: 'thin', dashed: true })
