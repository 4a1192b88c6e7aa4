import { chair, examinerAcross, floorUnder, jointsOf, limb, seated } from '../body.ts'
import {
  arrow,
  box,
  circle,
  curve,
  distance,
  type Figures,
  floorLine,
  moved,
  panels,
  path,
  type Point,
  polygon,
  type Shape,
  steps,
} from '../pen.ts'
import { screen, tableFromSide } from '../things.ts'

const HIP: Point = [70, 168]
const SIDE = { hip: HIP, scale: 1.9, upperArm: -62, forearm: -6, hand: -2 }
const { wrist, head, fingertip } = jointsOf(SIDE)

/** The palm side of a fingertip with its creases, in a field of its own. */
const fingertipIn = (middle: number): Shape =>
  path(`M${middle - 50} 274V112a50 78 0 0 1 100 0V274`, { fill: 'paper' }) +
  curve(
    [
      [middle - 49, 168],
      [middle, 176],
      [middle + 49, 168],
    ],
    { line: 'thin' },
  ) +
  curve(
    [
      [middle - 49, 250],
      [middle, 258],
      [middle + 49, 250],
    ],
    { line: 'thin' },
  )
const point = (at: Point): Shape => circle(at, 6, { fill: 'ink' })
/** The instrument from the side, its points on the skin. */
const disc = (points: readonly number[]): Shape =>
  box(44, 88, 72, 40, { fill: 'mid', round: 8 }) +
  points
    .map((x) =>
      polygon(
        [
          [x - 4, 128],
          [x + 4, 128],
          [x + 1.5, 168],
          [x - 1.5, 168],
        ],
        { fill: 'mid' },
      ),
    )
    .join('') +
  limb(
    [
      [20, 194],
      [240, 200],
    ],
    [25, 30],
  )

export const figures: Figures = {
  hand_supported: {
    title: 'Hand and instrument, seen from the side',
    words:
      'Client and examiner sit across a table. The forearm lies on it, the hand under test palm up in a rolled towel, so that the fingers do not move. A screen stands between the client’s eyes and the hand; behind it the examiner touches a fingertip.',
    oneHand: true,
    shapes: [
      chair(HIP, 1.9),
      floorLine(floorUnder(HIP, 1.9)),
      examinerAcross(372, floorUnder(HIP, 1.9), [fingertip[0] + 2, fingertip[1] - 6]),
      tableFromSide(136, wrist[1] + 18, 262, floorUnder(HIP, 1.9)),
      seated(SIDE),
      ...[0, 1, 2, 3].map((i) => circle([wrist[0] + 2 + i * 8, wrist[1] + 12], 6, { fill: 'mid' })),
      screen(wrist[0] - 30, 52, wrist[1] - 10, [head[0] + 18, head[1]]),
    ],
  },
  one_and_two: {
    title: 'One point and two, as they are shown',
    words:
      'The instrument from the side, on the pulp of a finger of the less affected hand, eyes open. First: one point touches. Second: two points touch, both at the same moment, lightly; then the same with the eyes closed.',
    oneHand: false,
    shapes: steps([[moved([40, 0], disc([80]))], [moved([40, 0], disc([60, 100]))]]),
  },
  static_points: {
    title: 'Static: one point, and two along the finger',
    words:
      'The pulp of a fingertip, its tip upwards, twice. First: one point in the middle of the pulp. Second: two points set lengthwise, one behind the other along the finger, both at once.',
    oneHand: false,
    shapes: panels([
      [fingertipIn(120), point([120, 112])],
      [
        fingertipIn(120),
        point([120, 90]),
        point([120, 134]),
        distance([190, 90], [190, 134], 'mm', [214, 118]),
      ],
    ]),
  },
  moving_points: {
    title: 'Moving: one point, and two side by side',
    words:
      'The pulp of a fingertip, its tip upwards, twice. First: one point moved lightly along the pulp from near to far, towards the tip. Second: two points side by side across the finger, moved together the same way.',
    oneHand: false,
    shapes: panels([
      [
        fingertipIn(120),
        point([120, 150]),
        arrow([
          [120, 138],
          [120, 70],
        ]),
      ],
      [
        fingertipIn(120),
        point([102, 150]),
        point([138, 150]),
        arrow([
          [102, 138],
          [102, 74],
        ]),
        arrow([
          [138, 138],
          [138, 74],
        ]),
      ],
    ]),
  },
}
