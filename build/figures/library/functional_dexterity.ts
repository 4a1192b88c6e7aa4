import { pinching } from '../grips.ts'
import {
  box,
  circle,
  distance,
  type Figures,
  label,
  line,
  moved,
  type Shape,
  steps,
  turned,
  turning,
} from '../pen.ts'
import { clientAt, holes, onTable, peg, SCALE, table } from '../things.ts'

/** The sizes of the board aren't known here, so none is written beside it. */
const board = (side: number): Shape =>
  box(-side / 2, -side / 2, side, side, { fill: 'light', round: 5 }) +
  holes([0, 0], 4, side / 4.4, side / 17, true)

/** A peg in its hole, seen from the side; the band is the end that was below. */
const banded = (x: number, y: number, upsideDown: boolean): Shape =>
  peg([x, y], 46, 16) + box(x - 8, upsideDown ? y - 23 : y + 13, 16, 10, { fill: 'ink', round: 3 })
const HOLE: Shape = box(14, 214, 132, 34, { fill: 'light' }) + box(68, 214, 24, 26, { fill: 'paper' })
const chuck = (x: number, y: number, degrees: number): Shape =>
  turned(degrees, [x, y], pinching([x, y], 0.34, 38, 2))

export const figures: Figures = {
  seated_at_board: {
    title: 'Seated at the board, seen from above',
    words:
      'The board with sixteen pegs in four rows lies at the middle of the body, 10 cm from the table edge. The hand under test begins beside the board. The other hand rests on the lap.',
    oneHand: true,
    shapes: [
      table(),
      moved(onTable(0, 20), board(20 * SCALE)),
      distance(onTable(-15, 0), onTable(-15, 10), '10 cm', onTable(-23, 4)),
      clientAt({ hand: [17, 0], to: 92 }),
    ],
  },
  path: {
    title: 'The path over the sixteen pegs, seen from above',
    words:
      'The client sits below. The path begins in the row farthest from the client, at the corner on the side away from the hand under test, runs along the row, drops one row and comes back the other way, to and fro down to the last of sixteen pegs.',
    oneHand: true,
    shapes: [
      box(118, 14, 244, 236, { fill: 'light', round: 6 }),
      ...[0, 1, 2, 3].flatMap((row) =>
        [0, 1, 2, 3].map((column) => circle([156 + column * 56, 48 + row * 56], 14, { fill: 'paper' })),
      ),
      line([
        [156, 48],
        [324, 48],
        [324, 104],
        [156, 104],
        [156, 160],
        [324, 160],
        [324, 216],
        [162, 216],
      ]),
      line([
        [174, 206],
        [160, 216],
        [174, 226],
      ]),
      circle([156, 48], 6, { fill: 'ink' }),
      label([240, 272], '1 → 16'),
    ],
  },
  turning_a_peg: {
    title: 'How one peg is turned, in three steps',
    words:
      'Seen from the side; a dark band marks the lower end of the peg. First: thumb, index and middle finger take the peg and lift it out of its hole. Second: it is turned over within the fingers, in the air; palm down, and neither peg nor hand leans against the board. Third: it is put back into the same hole, the other end up.',
    oneHand: true,
    shapes: steps([
      [HOLE, banded(80, 186, false), chuck(80, 176, -32)],
      [
        HOLE,
        turned(70, [72, 132], banded(72, 132, false)),
        chuck(72, 132, -32),
        turning([52, 142], 36, 110, 270, { line: 'thin' }),
      ],
      [HOLE, banded(80, 206, true), chuck(80, 192, -32)],
    ]),
  },
}
