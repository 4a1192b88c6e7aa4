import { pinching } from '../grips.ts'
import { arrow, box, circle, type Figures, line, moved, type Shape, steps, turned } from '../pen.ts'
import { clientAt, holes, loosePegs, onTable, peg, SCALE, table } from '../things.ts'

/** The build with a dish in the board, and the one with a box beside it; the pegs on the side of the right hand. */
const withDish = (k: number): Shape =>
  box(-14 * k, -6.5 * k, 28 * k, 13 * k, { fill: 'light', round: 5 }) +
  holes([-6.5 * k, 0], 3, 3.2 * k, 0.6 * k) +
  circle([6.8 * k, 0], 5 * k, { fill: 'paper' }) +
  loosePegs([6.8 * k, 0], 3 * k, 3 * k, 0.65 * k)
const withBox = (k: number): Shape =>
  box(-13.5 * k, -6.5 * k, 13 * k, 13 * k, { fill: 'light', round: 5 }) +
  holes([-7 * k, 0], 3, 3.2 * k, 0.6 * k) +
  box(1 * k, -6.5 * k, 13 * k, 13 * k, { fill: 'paper' }) +
  box(1.8 * k, -5.7 * k, 11.4 * k, 11.4 * k, { line: 'thin' }) +
  loosePegs([7.5 * k, 0], 3.6 * k, 3.2 * k, 0.65 * k)

/** Board and dish cut open, seen from the client's side. */
const CUT: Shape =
  box(8, 210, 76, 40, { fill: 'light' }) +
  [20, 42, 64].map((x) => box(x, 210, 8, 22, { fill: 'paper' })).join('') +
  line([
    [94, 222],
    [94, 250],
    [152, 250],
    [152, 222],
  ])
const IN_DISH: Shape = peg([118, 244], 36, 7, 90) + peg([130, 236], 36, 7, 78)
const hand = (x: number, y: number, ...held: readonly Shape[]): Shape =>
  held.join('') + turned(-38, [x, y], pinching([x, y], 0.32, 20))

export const figures: Figures = {
  board_turned: {
    title: 'The pegs on the side of the hand under test',
    words:
      'Two builds, seen from above. First: a board with nine holes and a round dish in it, turned so that the dish with the pegs is on the side of the hand under test. Second: a square board and a box beside it; the box stands on the side of the hand under test. All nine holes are free.',
    oneHand: true,
    shapes: [moved([240, 76], withDish(8.6)), moved([240, 208], withBox(8.6))],
  },
  seated_at_board: {
    title: 'Seated at the board, seen from above',
    words:
      'The client sits at the table, the board at the middle of the body, the nine pegs on the side of the hand under test. That hand begins beside the board; the other one may hold its edge.',
    oneHand: true,
    shapes: [
      table(),
      moved(onTable(0, 20), withDish(SCALE * 1.25)),
      clientAt({ hand: [15, 0], to: 96, other: [-20, 3] }),
    ],
  },
  in_and_out: {
    title: 'The whole task in three steps',
    words:
      'Board and dish are cut open and seen from the client’s side. First: one peg is taken from the dish. Second: it is set into a free hole, any one, until all nine are in. Third: one after the other, the pegs are taken out again and laid back into the dish.',
    oneHand: true,
    shapes: steps([
      [CUT, IN_DISH, hand(112, 214, peg([112, 218], 36, 7))],
      [
        CUT,
        IN_DISH,
        hand(46, 176, peg([46, 190], 36, 7)),
        arrow(
          [
            [46, 214],
            [46, 226],
          ],
          { line: 'thin' },
        ),
        peg([24, 213], 36, 7),
      ],
      [
        CUT,
        peg([24, 213], 36, 7),
        IN_DISH,
        hand(70, 160, peg([70, 168], 36, 7)),
        arrow(
          [
            [84, 178],
            [112, 180],
            [122, 218],
          ],
          { line: 'thin' },
        ),
      ],
    ]),
  },
}
