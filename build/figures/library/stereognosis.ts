import { chair, examinerAcross, floorUnder, jointsOf, limb, seated } from '../body.ts'
import { openPalm } from '../grips.ts'
import {
  box,
  circle,
  ellipse,
  type Figures,
  floorLine,
  line,
  moved,
  type Point,
  polygon,
  type Shape,
  steps,
  turned,
} from '../pen.ts'
import { clip, key, pencil, screen, spoon, tableFromSide } from '../things.ts'

const HIP: Point = [70, 168]
const SIDE = { hip: HIP, scale: 1.9, upperArm: -62, forearm: -8, hand: 4 }
const { wrist, head } = jointsOf(SIDE)

const comb = ([x, y]: Point): Shape =>
  box(x - 22, y - 4, 44, 5, { fill: 'mid' }) +
  Array.from({ length: 9 }, (_, i) =>
    line(
      [
        [x - 20 + i * 5, y + 1],
        [x - 20 + i * 5, y + 9],
      ],
      { line: 'thin' },
    ),
  ).join('')
const clothesPeg = ([x, y]: Point): Shape =>
  polygon(
    [
      [x - 8, y - 30],
      [x - 2, y - 30],
      [x - 1, y + 30],
      [x - 12, y + 30],
    ],
    { fill: 'mid' },
  ) +
  polygon(
    [
      [x + 8, y - 30],
      [x + 2, y - 30],
      [x + 1, y + 30],
      [x + 12, y + 30],
    ],
    { fill: 'mid' },
  ) +
  circle([x, y - 4], 4, { fill: 'paper' })
const EYE = (closed: boolean): Shape =>
  ellipse([80, 52], 22, 12, { fill: 'paper' }) +
  (closed
    ? line(
        [
          [56, 70],
          [104, 34],
        ],
        { line: 'thick' },
      )
    : circle([80, 52], 6, { fill: 'ink' }))

export const figures: Figures = {
  things: {
    title: 'The ten things, in two sets',
    words:
      'Two rows of five. Above, set A: a coin, a pencil, a door key, a teaspoon, a folded handkerchief. Below, set B, each under the thing it is like in size: a button with four holes, a toothbrush, a large paper clip, a clothes peg, a sponge.',
    oneHand: false,
    shapes: [
      circle([52, 74], 26, { fill: 'mid' }),
      circle([52, 74], 20, { line: 'thin' }),
      pencil([144, 72], 92, 12, 28),
      key([240, 66], 2.3),
      spoon([334, 66], 2.2),
      box(394, 40, 66, 66, { fill: 'light' }),
      line(
        [
          [427, 40],
          [427, 106],
        ],
        { line: 'thin' },
      ),
      line(
        [
          [394, 73],
          [460, 73],
        ],
        { line: 'thin' },
      ),
      line(
        [
          [20, 140],
          [460, 140],
        ],
        { line: 'thin', dashed: true },
      ),
      circle([52, 208], 26, { fill: 'mid' }),
      ...[
        [-7, -7],
        [7, -7],
        [-7, 7],
        [7, 7],
      ].map(([x = 0, y = 0]) => circle([52 + x, 208 + y], 3.5, { fill: 'paper', line: 'thin' })),
      turned(
        28,
        [144, 208],
        box(139, 160, 10, 96, { fill: 'mid', round: 4 }),
        ...[0, 1, 2, 3, 4].map((i) =>
          line(
            [
              [149, 166 + i * 6],
              [160, 166 + i * 6],
            ],
            { line: 'plain' },
          ),
        ),
      ),
      clip([240, 208], 3.6),
      clothesPeg([334, 208]),
      box(392, 184, 72, 46, { fill: 'light', round: 8 }),
      ...[
        [404, 198],
        [422, 214],
        [436, 196],
        [450, 212],
        [414, 222],
      ].map(([x = 0, y = 0]) => circle([x, y], 3, { line: 'thin' })),
    ],
  },
  hand_behind_screen: {
    title: 'The hand behind the screen, seen from the side',
    words:
      'Client and examiner sit across a table. The forearm lies on it, the hand under test palm up on a thick soft cloth behind a screen that stands between the client’s eyes and the hand. The examiner lays a thing into the open palm without a sound. A box beside the examiner keeps the other things out of sight.',
    oneHand: true,
    shapes: [
      chair(HIP, 1.9),
      floorLine(floorUnder(HIP, 1.9)),
      examinerAcross(384, floorUnder(HIP, 1.9), [wrist[0] + 34, wrist[1] - 18]),
      tableFromSide(136, wrist[1] + 16, 262, floorUnder(HIP, 1.9)),
      box(wrist[0] - 20, wrist[1] + 8, 78, 8, { fill: 'mid', round: 4 }),
      seated({ ...SIDE, withoutHand: true }),
      moved(wrist, turned(180, [0, 0], `<g transform="scale(1 -1)">${openPalm([-30, -6], 0.28)}</g>`)),
      circle([wrist[0] + 30, wrist[1] - 14], 7, { fill: 'mid' }),
      screen(wrist[0] - 26, 52, wrist[1] - 12, [head[0] + 18, head[1]]),
      box(356, wrist[1] - 14, 40, 30, { fill: 'light' }),
    ],
  },
  comb_shown: {
    title: 'The practice with the comb, in three steps',
    words:
      'First, the eyes see it: the comb is laid into the open palm of the hand under test. Second, still in sight: the hand closes on it and feels it all around, that hand alone, and the client says or points to what it is. Third: the hand goes behind the screen, and the same is done without sight.',
    oneHand: true,
    shapes: steps([
      [EYE(false), openPalm([64, 196], 0.5), comb([70, 176])],
      [EYE(false), feeling([74, 196]), comb([46, 180]), feelingFingers([74, 196])],
      [
        EYE(true),
        box(8, 96, 6, 150, { fill: 'ink' }),
        feeling([84, 196]),
        comb([56, 180]),
        feelingFingers([84, 196]),
      ],
    ]),
  },
}

/** A hand that closes on a thing: the palm under it, the fingers over it. */
function feeling([x, y]: Point): Shape {
  return limb(
    [
      [x + 130, y + 12],
      [x + 40, y + 8],
      [x - 20, y + 8],
    ],
    [17, 17, 18],
  )
}
function feelingFingers([x, y]: Point): Shape {
  return (
    limb(
      [
        [x - 26, y + 6],
        [x - 52, y - 14],
        [x - 34, y - 34],
        [x - 10, y - 30],
      ],
      [11, 10, 9, 8],
    ) +
    limb(
      [
        [x + 36, y + 4],
        [x + 16, y - 18],
        [x - 4, y - 22],
      ],
      [11, 9, 7],
    )
  )
}
