import {
  armFromAbove,
  armFromSide,
  chair,
  floorUnder,
  fromAbove,
  headFromSide,
  jointsOf,
  limb,
  seated,
} from '../body.ts'
import { handFromAbove } from '../hand-from-above.ts'
import {
  arrow,
  box,
  circle,
  curve,
  distance,
  type Figures,
  floorLine,
  label,
  lift,
  line,
  panels,
  type Point,
  polygon,
  type Shape,
} from '../pen.ts'
import { canFromAbove, clientAt, clip, key, onTable, pencil, SCALE, table, tableFromSide } from '../things.ts'

const HIP: Point = [110, 174]
const S = 1.9
const FLOOR = floorUnder(HIP, S)
const LAP = { hip: HIP, scale: S, upperArm: -74, forearm: -14, hand: -8 }
/** The table is 74 cm high. */
const TOP = FLOOR - 74 * S
const lapHand = jointsOf(LAP).fingertip

const CLOSE = { hip: [126, 174] as Point, scale: S, upperArm: -19, forearm: -19, hand: -4 }
const far = jointsOf(CLOSE)

/** A towel, a lock on its board, and the rest, each on its mark, as they come. */
const LOCK = ([x, y]: Point): Shape =>
  box(x - 14, y - 20, 28, 40, { fill: 'light' }) +
  circle([x, y - 4], 7, { fill: 'paper' }) +
  key([x, y + 6], 0.5)
const ON_TEMPLATE: Shape = [
  canFromAbove(onTable(-44, 24), 14),
  pencil(onTable(-33, 24), 70, 6, 12),
  clip(onTable(-23, 24), 1.4),
  ...[-15, -10, -5].map((x) => circle(onTable(x, 24), 8, { fill: 'mid' })),
  ...[2, 11.5, 21].map((x) => box(...onTable(x, 30.4), 7.6 * SCALE, 12.7 * SCALE, { fill: 'paper' })),
  LOCK(onTable(36, 24)),
  box(...onTable(43.5, 33), 11 * SCALE, 18 * SCALE, { fill: 'paper' }),
  line([onTable(49, 33), onTable(49, 15)], { line: 'thin', dashed: true }),
].join('')

const standing = (x: number, floor: number, reach: Point, s: number): Shape =>
  limb(
    [
      [x - 7 * s, floor - 78 * s],
      [x - 7 * s, floor - 3 * s],
    ],
    [8 * s, 4.5 * s],
  ) +
  limb(
    [
      [x + 7 * s, floor - 78 * s],
      [x + 7 * s, floor - 3 * s],
    ],
    [8 * s, 4.5 * s],
  ) +
  limb(
    [
      [x, floor - 86 * s],
      [x, floor - 126 * s],
    ],
    [14 * s, 16 * s],
  ) +
  headFromSide([x, floor - 158 * s], s) +
  armFromSide([x + 13 * s, floor - 130 * s], [x + 20 * s, floor - 104 * s], reach, s, -50)

export const figures: Figures = {
  side_on_to_the_table: {
    title: 'Side on to the table, in two drawings',
    words:
      'The chair stands side on, so that the arm under test is next to the table; the back is against the back of the chair, the hands lie on the lap. First, seen from above: a broken outline on the table shows where the forearm is put, and beyond it stands the box. Second, seen from behind the chair: the box on the table is 25.4 cm high; arrows lead from the lap out to the side, onto the table and onto the box.',
    oneHand: true,
    shapes: panels([
      [
        box(136, 14, 96, 252, { fill: 'light', round: 3 }),
        box(168, 36, 56, 56, { fill: 'mid' }),
        box(150, 128, 74, 24, { line: 'thin', dashed: true, round: 8 }),
        box(30, 128, 84, 92, { fill: 'paper', round: 5 }),
        armFromAbove([72, 166], 2.4, -1, [54, 124], 6),
        armFromAbove([72, 166], 2.4, 1, [92, 124], 6),
        handFromAbove({ wrist: [54, 124], to: 60, scale: 2.3, pose: 'resting', left: true }),
        handFromAbove({ wrist: [92, 124], to: 110, scale: 2.3, pose: 'resting' }),
        fromAbove([72, 168], 2.4),
        arrow(
          [
            [112, 112],
            [128, 108],
            [150, 138],
          ],
          { line: 'thin' },
        ),
      ],
      [
        floorLine(262, 4, 236),
        box(124, 132, 110, 6, { fill: 'light' }),
        line([
          [222, 138],
          [222, 262],
        ]),
        line([
          [136, 138],
          [136, 262],
        ]),
        box(172, 89, 48, 43, { fill: 'mid' }),
        distance([164, 132], [164, 89], '25.4 cm', [186, 80]),
        box(36, 146, 76, 116, { fill: 'paper' }),
        limb(
          [
            [74, 150],
            [74, 96],
          ],
          [28, 30],
        ),
        circle([74, 46], 18, { fill: 'paper' }),
        limb(
          [
            [102, 92],
            [108, 132],
            [94, 152],
          ],
          [9, 8, 6],
        ),
        box(38, 108, 72, 60, { fill: 'paper' }),
        arrow(
          [
            [114, 140],
            [126, 112],
            [142, 126],
          ],
          { line: 'thin' },
        ),
      ],
    ]),
  },
  facing_the_table: {
    title: 'Facing the table, seen from the side',
    words:
      'The client sits on a chair without arm rests, back and hips against its back, both feet flat, the hands on the lap. The table stands in front, with the box of 25.4 cm on it for the items with the box; a broken line leads from the hand on the lap onto the table, another up onto the box.',
    oneHand: true,
    shapes: [
      chair(HIP, S),
      floorLine(FLOOR),
      seated(LAP),
      tableFromSide(222, TOP, 220, FLOOR),
      box(304, TOP - 25.4 * S, 48, 25.4 * S, { fill: 'mid' }),
      lift([lapHand[0], lapHand[1] - 10], [226, TOP - 34], [258, TOP - 6]),
      lift([lapHand[0] - 6, lapHand[1] - 14], [244, TOP - 84], [318, TOP - 25.4 * S - 6]),
      distance([376, TOP], [376, TOP - 25.4 * S], '25.4 cm', [412, TOP - 20]),
    ],
  },
  close_to_the_table: {
    title: 'Close to the table, the elbow straight',
    words:
      'The chair stands close to the table on its mark. The arm under test lies straight on the table, the hand behind the weight of 0.45 kg. A broken line leads back towards the client: the weight is drawn in over the near line by bending the elbow.',
    oneHand: true,
    shapes: [
      chair([126, 174], S),
      floorLine(FLOOR),
      tableFromSide(196, TOP, 250, FLOOR),
      seated(CLOSE),
      box(far.fingertip[0] - 34, TOP - 24, 22, 24, { fill: 'mid' }),
      label([far.fingertip[0] + 34, TOP - 16], '0.45 kg'),
      line(
        [
          [214, TOP - 4],
          [214, TOP + 14],
        ],
        { line: 'thick' },
      ),
      arrow(
        [
          [far.fingertip[0] - 14, TOP - 56],
          [far.fingertip[0] - 96, TOP - 56],
        ],
        { line: 'thin', dashed: true },
      ),
    ],
  },
  things_on_template: {
    title: 'Things on the template, seen from above',
    words:
      'The template lies on the table; its middle line runs away from the client, who sits in front of it. One thing at a time lies on its mark. In a row, as they come: can, pencil, paper clip, three checkers side by side, three cards side by side, the board with the lock, the towel. Never do two of them lie there together.',
    oneHand: false,
    shapes: [
      table(),
      line([onTable(0, 1), onTable(0, 44)], { line: 'thin', dashed: true }),
      ON_TEMPLATE,
      clientAt({ hand: [16, -5], to: 96, other: [-16, -5] }),
    ],
  },
  standing_with_basket: {
    title: 'Standing, from the basket to the side table',
    words:
      'The client stands before a low table with the basket on it. A second person stands behind at the side and guards without touching. A broken line leads from the basket to the higher side table, which stands on the side of the arm under test.',
    oneHand: true,
    shapes: [
      floorLine(262),
      standing(96, 262, [128, 158], 1.25),
      standing(190, 262, [232, 170], 1.35),
      tableFromSide(212, 216, 76, 262),
      polygon(
        [
          [224, 192],
          [276, 192],
          [268, 214],
          [232, 214],
        ],
        { fill: 'mid' },
      ),
      curve([
        [230, 192],
        [236, 170],
        [250, 164],
        [264, 170],
        [270, 192],
      ]),
      tableFromSide(326, 158, 116, 262),
      lift([262, 158], [306, 92], [366, 146]),
    ],
  },
}
