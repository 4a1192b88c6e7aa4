import { chair, examinerAcross, floorUnder, jointsOf, limb, seated } from '../body.ts'
import { handFromAbove } from '../hand-from-above.ts'
import {
  arrow,
  box,
  circle,
  curve,
  type Figures,
  floorLine,
  label,
  line,
  panels,
  type Point,
  type Shape,
  steps,
} from '../pen.ts'
import { screen, tableFromSide } from '../things.ts'

const HIP: Point = [70, 168]
const SIDE = { hip: HIP, scale: 1.9, upperArm: -62, forearm: -6, hand: -2 }
const { wrist, head, fingertip } = jointsOf(SIDE)
const FILAMENT_END: Point = [fingertip[0] - 6, fingertip[1] - 7]

const skin = (y: number, dent = 0): Shape =>
  curve(
    [
      [10, y + 14],
      [50, y + 3],
      [80, y + dent],
      [110, y + 3],
      [150, y + 14],
    ],
    { line: 'plain' },
  )
const handle = (y: number): Shape => box(66, y, 62, 14, { fill: 'mid', round: 3 })
const at = (where: Point): Shape => circle(where, 9, { fill: 'ink' })

export const figures: Figures = {
  hand_supported: {
    title: 'Hand and filament, seen from the side',
    words:
      'Client and examiner sit across a table. The forearm lies on it, the hand under test palm up in a rolled towel, so that the fingers do not move. A screen stands between the client’s eyes and the hand; behind it the examiner holds a filament over a fingertip.',
    oneHand: true,
    shapes: [
      chair(HIP, 1.9),
      floorLine(floorUnder(HIP, 1.9)),
      examinerAcross(372, floorUnder(HIP, 1.9), [FILAMENT_END[0] + 30, FILAMENT_END[1] - 34]),
      tableFromSide(136, wrist[1] + 18, 262, floorUnder(HIP, 1.9)),
      seated(SIDE),
      ...[0, 1, 2, 3].map((i) => circle([wrist[0] + 2 + i * 8, wrist[1] + 12], 6, { fill: 'mid' })),
      line([[FILAMENT_END[0], FILAMENT_END[1] - 30], FILAMENT_END], { line: 'thin' }),
      line(
        [
          [FILAMENT_END[0] - 4, FILAMENT_END[1] - 32],
          [FILAMENT_END[0] + 40, FILAMENT_END[1] - 32],
        ],
        { line: 'thick' },
      ),
      screen(wrist[0] - 30, 52, wrist[1] - 10, [head[0] + 18, head[1]]),
    ],
  },
  places: {
    title: 'Where the filament is set down',
    words:
      'Two drawings of the hand under test: first its palm side, then its back. Dots mark the pulps of thumb, index and little finger, and on the back the web between thumb and index finger.',
    oneHand: true,
    shapes: panels([
      [
        limb(
          [
            [120, 244],
            [120, 340],
          ],
          [25, 30],
        ),
        handFromAbove({ wrist: [120, 240], to: 90, scale: 11, palmUp: true }),
        at([195, 149]),
        at([171, 74]),
        at([65, 95]),
      ],
      [
        limb(
          [
            [120, 244],
            [120, 340],
          ],
          [25, 30],
        ),
        handFromAbove({ wrist: [120, 240], to: 90, scale: 11 }),
        at([82, 170]),
      ],
    ]),
  },
  three_moves: {
    title: 'How a filament is set down, in three steps',
    words:
      'First: the filament is set down square to the skin in one to one and a half seconds. Second: it is held for as long while it bends. Third: it is lifted as slowly. It neither slides nor bounces.',
    oneHand: false,
    shapes: steps([
      [
        skin(220),
        handle(60),
        line([
          [80, 74],
          [80, 170],
        ]),
        arrow([
          [44, 110],
          [44, 170],
        ]),
        label([120, 262], '1–1.5 s'),
      ],
      [
        skin(220, 6),
        handle(104),
        curve([
          [80, 118],
          [106, 150],
          [108, 182],
          [80, 226],
        ]),
        label([120, 262], '1–1.5 s'),
      ],
      [
        skin(220),
        handle(60),
        line([
          [80, 74],
          [80, 170],
        ]),
        arrow([
          [44, 170],
          [44, 110],
        ]),
        label([120, 262], '1–1.5 s'),
      ],
    ]),
  },
}
