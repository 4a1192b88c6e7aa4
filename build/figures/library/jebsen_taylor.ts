import { pinching } from '../grips.ts'
import {
  arrow,
  box,
  circle,
  distance,
  ellipse,
  type Figures,
  floorLine,
  lift,
  line,
  type Point,
  type Shape,
  turned,
  twoRows,
} from '../pen.ts'
import { can, canFromAbove, clientAt, clip, onTable, pencil, SCALE, spoon, table } from '../things.ts'

/** The board, about 105 by 29 cm, its near edge 13 cm from the table's; the upright runs along its far part. */
const BOARD: Shape = box(...onTable(-52, 38), 104 * SCALE, 25 * SCALE, { fill: 'paper', round: 2 })
const UPRIGHT: Shape = box(...onTable(-52, 27), 104 * SCALE, 1.6 * SCALE, { fill: 'mid' })
/** An arrow from the table's far end down to what is taken first. */
const first = (at: Point): Shape =>
  arrow([
    [at[0], at[1] - 34],
    [at[0], at[1] - 14],
  ])
const THIRTEEN: Shape = distance(onTable(-36, 0), onTable(-36, 13), '13 cm', onTable(-44, 5))
const resting = { hand: [22, -7] as Point, to: 92 }
const bean = (at: Point): Shape => turned(20, at, ellipse(at, 6, 4, { fill: 'mid' }))
const cap = (at: Point): Shape => circle(at, 6, { fill: 'paper' }) + circle(at, 3.5, { line: 'thin' })
const coin = (at: Point): Shape => circle(at, 5.5, { fill: 'mid' })
const outwards = [5, 10, 15, 20, 25, 30]

/** Small pictures of the seven tasks from the client's side, the hand under test coming from its own side. */
const hand = (x: number, y: number, gap: number): Shape => turned(-36, [x, y], pinching([x, y], 0.24, gap))
const TASKS: Shape[][] = [
  [
    floorLine(126, 4, 116),
    box(12, 118, 76, 6, { fill: 'light' }),
    pencil([52, 98], 44, 6, 24),
    hand(56, 88, 20),
  ],
  [
    floorLine(126, 4, 116),
    box(20, 120, 34, 5, { fill: 'mid' }),
    turned(-50, [62, 104], box(46, 102, 32, 5, { fill: 'mid' })),
    hand(72, 92, 20),
    arrow(
      [
        [76, 74],
        [52, 60],
        [32, 84],
      ],
      { line: 'thin' },
    ),
  ],
  [
    floorLine(126, 4, 116),
    can([26, 126], 32, 42),
    coin([58, 72]),
    hand(62, 72, 22),
    lift([56, 64], [42, 50], [28, 74]),
  ],
  [
    floorLine(126, 4, 116),
    can([24, 126], 32, 42),
    spoon([56, 74], 1.3, -100),
    hand(82, 78, 18),
    bean([42, 66]),
  ],
  [
    floorLine(126, 4, 116),
    box(8, 116, 104, 9, { fill: 'light' }),
    box(28, 106, 30, 9, { fill: 'mid' }),
    box(28, 96, 30, 9, { fill: 'mid' }),
    box(32, 70, 30, 9, { fill: 'mid' }),
    hand(64, 74, 20),
  ],
  [floorLine(126, 4, 116), box(2, 112, 72, 13, { fill: 'light' }), can([48, 102], 34, 44), hand(52, 80, 128)],
  [
    floorLine(126, 4, 116),
    box(2, 112, 72, 13, { fill: 'light' }),
    can([48, 102], 34, 44),
    box(38, 74, 20, 14, { fill: 'ink' }),
    hand(52, 80, 128),
  ],
]

export const figures: Figures = {
  seated_at_table: {
    title: 'Seated at the table, seen from above',
    words:
      'The client sits at the table, both hands within reach of it. The hand under test lies on the table, the other one rests on the lap. What a task needs lies in front of the client; nothing else does.',
    oneHand: true,
    shapes: [table(), clientAt({ hand: [18, 2], to: 94, midline: true })],
  },
  seven_tasks: {
    title: 'The seven tasks in their order',
    words:
      'Seven small pictures. First, writing. Second, a card is turned over. Third, small things are picked up and dropped into the can. Fourth, a bean is brought with the spoon into the can. Fifth, checkers are stacked on the board. Sixth, an empty can is lifted onto the board. Seventh, the same with a can of 0.45 kg, marked by a dark square.',
    oneHand: true,
    shapes: twoRows(TASKS.slice(0, 4), TASKS.slice(4), true),
  },
  writing_place: {
    title: 'The place for writing, seen from above',
    words:
      'A sheet lies before the client, the pen beside it on the side of the hand under test. The card with the sentence stands on its stand behind the sheet, its face turned away. The other hand may hold the sheet.',
    oneHand: true,
    shapes: [
      table(),
      box(...onTable(-10.5, 32), 21 * SCALE, 29.7 * SCALE, { fill: 'paper' }),
      line([onTable(-8, 25), onTable(8, 25)], { line: 'thin', dashed: true }),
      line([onTable(-11, 40), onTable(11, 40)], { line: 'thick' }),
      line([onTable(-8, 40), onTable(-8, 38)]),
      line([onTable(8, 40), onTable(8, 38)]),
      pencil(onTable(15, 22), 56, 6, 8),
      clientAt({ hand: [19, -4], to: 96, other: [-13, -4] }),
    ],
  },
  cards_in_a_row: {
    title: 'Five cards in a row, seen from above',
    words:
      'Five cards stand upright in a row parallel to the edge of the table, about 5 cm apart and 13 cm from the edge. An arrow marks the one that is turned first: the outermost on the side of the hand under test.',
    oneHand: true,
    shapes: [
      table(),
      ...[-2, -1, 0, 1, 2].map((i) =>
        box(...onTable(i * 12.6 - 3.8, 25.7), 7.6 * SCALE, 12.7 * SCALE, { fill: 'paper' }),
      ),
      first(onTable(25.2, 24.5)),
      THIRTEEN,
      clientAt(resting),
    ],
  },
  things_and_can: {
    title: 'Small things and the can, seen from above',
    words:
      'The can stands before the client, 13 cm from the edge. In a row from the outside towards it, on the side of the hand under test: two paper clips, two bottle caps with the open side up, two coins. An arrow marks the outermost, which is taken first.',
    oneHand: true,
    shapes: [
      table(),
      canFromAbove(onTable(0, 18), 4.5 * SCALE),
      ...[9, 14].map((x) => coin(onTable(x, 18))),
      ...[19, 24].map((x) => cap(onTable(x, 18))),
      ...[29, 34].map((x) => clip(onTable(x, 18), 1)),
      first(onTable(34, 18)),
      THIRTEEN,
      clientAt(resting),
    ],
  },
  beans_on_board: {
    title: 'Beans on the board, seen from above',
    words:
      'The board is clamped 13 cm from the edge. Five beans lie against its upright, 5 cm apart, on the side of the hand under test. The can stands before the middle of the board. The hand under test holds the teaspoon. An arrow marks the outermost bean, which is taken first.',
    oneHand: true,
    shapes: [
      table(),
      BOARD,
      UPRIGHT,
      ...outwards.slice(1).map((x) => bean(onTable(x, 24.2))),
      canFromAbove(onTable(0, 9), 4 * SCALE),
      arrow([onTable(30, 37), onTable(30, 29)]),
      THIRTEEN,
      spoon(onTable(19, 10.5), 1.4, 8),
      clientAt({ hand: [22, -7], to: 100, pose: 'pinch' }),
    ],
  },
  checkers_and_board: {
    title: 'Checkers before the board, seen from above',
    words:
      'Four checkers lie flat on the table and touch the board, two on each side of its middle. A broken circle on the board shows where they are stacked, one on top of the other.',
    oneHand: true,
    shapes: [
      table(),
      BOARD,
      ...[-6, -2.2, 2.2, 6].map((x) => circle(onTable(x, 11.2), 1.8 * SCALE, { fill: 'mid' })),
      circle(onTable(0, 20), 1.8 * SCALE, { dashed: true }),
      arrow([onTable(2.2, 13.6), onTable(0.6, 17.4)], { line: 'thin' }),
      clientAt(resting),
    ],
  },
  cans_and_board: {
    title: 'Cans before the board, seen from above',
    words:
      'Five cans stand in a row before the board, 5 cm apart. A broken circle on the board shows where the first one is let go: it is the outermost on the side of the hand under test.',
    oneHand: true,
    shapes: [
      table(),
      BOARD,
      ...[-2, -1, 0, 1, 2].map((i) => canFromAbove(onTable(i * 12, 8.6), 3.5 * SCALE)),
      circle(onTable(24, 21), 3.5 * SCALE, { dashed: true }),
      arrow([onTable(24, 12.6), onTable(24, 16.6)], { line: 'thin' }),
      clientAt({ hand: [18, -11], to: 90 }),
    ],
  },
}
