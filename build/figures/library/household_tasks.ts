import { armFromAbove, fromAbove, limb } from '../body.ts'
import { pinching } from '../grips.ts'
import { handFromAbove } from '../hand-from-above.ts'
import { TABLE_TOP, above, cloth, clothes, egg, fork, hook, knife, outline, towel } from '../household.ts'
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
  moved,
  path,
  type Shape,
  turned,
  turning,
} from '../pen.ts'
import { clientAt, cup, onTable, SCALE, spoon, stand, table } from '../things.ts'

const MARKS: Shape = [
  line([onTable(-55, 15), onTable(55, 15)], { dashed: true }),
  line([onTable(-55, 35), onTable(55, 35)], { dashed: true }),
  line(
    [
      [240, 14],
      [240, 186],
    ],
    { line: 'thin', dashed: true },
  ),
  ...[-25, 25].map((x) => box(...onTable(x - 5, 10), 10 * SCALE, 10 * SCALE, { fill: 'paper' })),
].join('')
const NEAR_AND_FAR: Shape =
  distance(onTable(-41, 0), onTable(-41, 15), '15', onTable(-46, 6)) +
  distance(onTable(-50, 0), onTable(-50, 35), '35 cm', onTable(-45, 28))
export const figures: Figures = {
  table_marks: {
    title: 'The marks on the table, seen from above',
    words:
      'The client sits in front of the middle of the table. A broken line marks the midline. On each side of it, at the edge, a square mark of 10 by 10 cm for the hand, its middle 25 cm from the midline. Two broken lines run across: the near line 15 cm and the far line 35 cm from the edge. Behind the far line, 40 cm from the edge, a bar shows where the stand is put.',
    oneHand: false,
    shapes: [
      table(),
      MARKS,
      NEAR_AND_FAR,
      box(...onTable(-45, 41.5), 90 * SCALE, 2.4 * SCALE, { fill: 'mid' }),
      distance(onTable(0, 12), onTable(25, 12), '25 cm', onTable(12.5, 4)),
      fromAbove([240, 258], 4),
    ],
  },
  hand_on_mark: {
    title: 'Where the hand begins, seen from above',
    words:
      'The hand under test lies flat on its square mark at the edge of the table, its middle 25 cm from the midline. The other hand lies on the lap.',
    oneHand: true,
    shapes: [table(), MARKS, clientAt({ hand: [25, -4], to: 90, pose: 'flat' })],
  },
  cutlery: {
    title: 'Laying the table, seen from above',
    words:
      'Six pieces lie side by side across the far line, handles towards the client, knives outermost: knife, fork, spoon, spoon, fork, knife. In front of them, on the near line, a mat with two places; each place has three broken outlines for a fork, a spoon and a knife. The hand lays one piece into its outline.',
    oneHand: true,
    shapes: [
      box(14, 8, 452, 262, { fill: 'light', round: 3 }),
      box(70, 142, 340, 110, { fill: 'paper', round: 4 }),
      ...[104, 142, 180, 300, 338, 376].map((x) => outline([x, 196])),
      fork([104, 196]),
      knife([150, 62]),
      fork([186, 62]),
      spoon([222, 56], 1.6),
      spoon([258, 56], 1.6),
      knife([330, 62]),
      arrow(
        [
          [294, 96],
          [292, 116],
          [300, 150],
        ],
        { line: 'thin' },
      ),
      fork([300, 196]),
      handFromAbove({ wrist: [356, 300], to: 122, scale: 6.4, pose: 'pinch' }),
    ],
  },
  cups: {
    title: 'Hanging up the cups, seen from the client',
    words:
      'The stand on the table carries a row of four open hooks, 15 cm apart and 35 cm above the table. Two cups already hang by their handles. Two cups stand upright on the far line below; the hand takes one round its body and lifts it to a free hook.',
    oneHand: true,
    shapes: [
      stand(50, 430, above(45), TABLE_TOP),
      floorLine(TABLE_TOP),
      ...[145, 208, 271, 334].map(hook),
      ...[145, 208].map((x) =>
        moved([x + 6, above(38)], circle([0, 4], 9), box(-18, 14, 36, 34, { fill: 'light', round: 3 })),
      ),
      cup([214, TABLE_TOP], 1.7, -1),
      cup([300, TABLE_TOP], 1.7, -1),
      pinching([304, 230], 0.34, 104),
      lift([296, 200], [282, 160], [284, above(35)]),
      distance([448, TABLE_TOP], [448, above(35)], '35 cm', [446, above(35) - 10]),
    ],
  },
  pegs: {
    title: 'Pegging the cloths, seen from the client',
    words:
      'Three cloths hang by half over a taut line on the stand, 45 cm above the table, 5 cm apart. Two of them are pegged, each with a peg at both corners. A low basket with the remaining pegs stands on the near line at the midline; the hand takes a peg up to the third cloth.',
    oneHand: true,
    shapes: [
      stand(50, 430, above(45), TABLE_TOP),
      floorLine(TABLE_TOP),
      ...[70, 190, 310].map((x) => cloth(x, 100, 62)),
      line([
        [50, above(45)],
        [430, above(45)],
      ]),
      ...[78, 162, 198, 282].map((x) => clothes([x, above(45)])),
      box(192, 224, 96, 26, { fill: 'light', round: 3 }),
      clothes([222, 222]),
      clothes([322, 120]),
      turned(-20, [326, 116], pinching([326, 116], 0.3, 14)),
      arrow(
        [
          [322, 104],
          [320, 84],
        ],
        { line: 'thin' },
      ),
      lift([250, 218], [262, 150], [306, 124]),
    ],
  },
  eggs: {
    title: 'Eggs into the box, seen from above',
    words:
      'Behind, on the far line, the open box with six hollows in two rows of three, its long side towards the client; two eggs lie in it. In front, on the near line at the midline, a round bowl with the other four eggs. The hand takes one egg and lets it go softly in a free hollow.',
    oneHand: true,
    shapes: [
      box(14, 8, 452, 262, { fill: 'light', round: 3 }),
      box(140, 20, 200, 96, { fill: 'paper', round: 6 }),
      ...[0, 1, 2, 3, 4, 5].map((i) => circle([176 + (i % 3) * 64, 44 + Math.floor(i / 3) * 48], 20)),
      egg([176, 44]),
      egg([240, 44]),
      circle([240, 194], 58, { fill: 'paper' }),
      ...[
        [220, 176],
        [256, 174],
        [226, 214],
      ].map(([x = 0, y = 0]) => egg([x, y])),
      arrow(
        [
          [280, 156],
          [306, 142],
          [306, 120],
        ],
        { line: 'thin' },
      ),
      handFromAbove({ wrist: [312, 262], to: 118, scale: 6, pose: 'pinch' }),
      egg([262, 192]),
    ],
  },
  curtain: {
    title: 'Drawing the curtain, seen from the client',
    words:
      'A rail on the stand, 45 cm above the table, with a curtain on eight rings, pushed together at the end away from the hand under test; a short stroke at each end of the rail marks 70 cm. The hand takes the free edge in the middle of its height and draws it to the mark at the other end.',
    oneHand: true,
    shapes: [
      stand(50, 430, above(45), TABLE_TOP),
      floorLine(TABLE_TOP),
      ...[64, 416].map((x) =>
        line(
          [
            [x, above(47.5)],
            [x, above(42.5)],
          ],
          { line: 'thick' },
        ),
      ),
      box(64, above(43), 110, 150, { fill: 'light' }),
      ...[86, 108, 130, 152].map((x) =>
        line(
          [
            [x, above(43)],
            [x, above(43) + 150],
          ],
          { line: 'thin' },
        ),
      ),
      ...Array.from({ length: 8 }, (_, i) => circle([70 + i * 14, above(45)], 7)),
      pinching([176, 150], 0.34, 12),
      arrow([
        [200, 96],
        [404, 96],
      ]),
      label([302, 84], '70 cm'),
    ],
  },
  drawers: {
    title: 'Shutting three drawers, seen from the side',
    words:
      'The client would sit on the near side. A chest of three drawers stands on the table behind the far line. All three drawers are out to the stop, 25 cm; the hand pushes them in with flat fingers, the lowest first, then the middle one, then the upper one.',
    oneHand: true,
    shapes: [
      floorLine(TABLE_TOP),
      box(236, 70, 200, 180, { fill: 'light', round: 3 }),
      ...[84, 140, 196].map(
        (y, i) =>
          box(126, y, 116, 44, { fill: 'paper' }) +
          box(114, y + 16, 12, 12, { fill: 'mid' }) +
          label([184, y + 28], String(3 - i)),
      ),
      arrow([
        [44, 190],
        [96, 190],
      ]),
      arrow(
        [
          [60, 106],
          [104, 106],
        ],
        { line: 'thin', dashed: true },
      ),
      arrow(
        [
          [60, 162],
          [104, 162],
        ],
        { line: 'thin', dashed: true },
      ),
      distance([126, 58], [242, 58], '25 cm', [184, 48]),
      limb(
        [
          [0, 240],
          [58, 222],
          [84, 219],
          [112, 218],
        ],
        [17, 13, 12, 7],
      ),
    ],
  },
  wiping: {
    title: 'Wiping three lines away, seen from above',
    words:
      'Behind the near line a field of 60 by 40 cm is drawn on the table, three lines of 60 cm across it, 10 cm apart. The damp cloth lies flat at the edge of the field on the side of the hand under test, the flat hand on it; the first stretch of the upper line is wiped away.',
    oneHand: true,
    shapes: [
      box(14, 8, 452, 262, { fill: 'light', round: 3 }),
      box(100, 24, 280, 176, { fill: 'paper', line: 'thin' }),
      line(
        [
          [100, 66],
          [322, 66],
        ],
        { line: 'thick' },
      ),
      line(
        [
          [100, 112],
          [380, 112],
        ],
        { line: 'thick' },
      ),
      line(
        [
          [100, 158],
          [380, 158],
        ],
        { line: 'thick' },
      ),
      box(332, 40, 92, 88, { fill: 'mid', round: 8 }),
      arrow(
        [
          [328, 88],
          [262, 88],
        ],
        { line: 'thin' },
      ),
      line(
        [
          [26, 232],
          [454, 232],
        ],
        { dashed: true },
      ),
      label([52, 254], '15 cm'),
      armFromAbove([320, 330], 4, 1, [404, 176], 4),
      handFromAbove({ wrist: [404, 172], to: 104, scale: 6.6, pose: 'flat' }),
    ],
  },
  towels: {
    title: 'Towels onto the shelf, seen from the client',
    words:
      'A shelf on the stand, 45 cm above the table; two short strokes mark the sides of the rectangle in its middle. One folded towel lies within it. Two folded towels lie on top of each other on the near line below; the hand lifts the upper one onto the shelf and lets it go within the marks.',
    oneHand: true,
    shapes: [
      stand(50, 430, above(45) + 8, TABLE_TOP),
      box(114, above(45), 252, 8, { fill: 'light' }),
      floorLine(TABLE_TOP),
      ...[172, 308].map((x) =>
        line(
          [
            [x, above(45) - 4],
            [x, above(45) + 12],
          ],
          { line: 'thick' },
        ),
      ),
      towel([240, above(45)]),
      towel([240, TABLE_TOP]),
      towel([240, TABLE_TOP - 34]),
      pinching([290, TABLE_TOP - 44], 0.34, 56),
      lift([240, 186], [244, 140], [240, above(45) + 22]),
    ],
  },
  stirring: {
    title: 'Stirring, seen from above',
    words:
      'A round pot with lentils stands at the midline on the far line, a stroke at its rim towards the client as the mark at which rounds are counted. The hand holds the spoon upright; it goes round along the wall of the pot.',
    oneHand: true,
    shapes: [
      box(14, 8, 452, 262, { fill: 'light', round: 3 }),
      circle([240, 104], 88, { fill: 'paper' }),
      circle([240, 104], 80, { fill: 'mid', line: 'thin' }),
      line(
        [
          [240, 180],
          [240, 200],
        ],
        { line: 'thick' },
      ),
      turning([240, 104], 58, 215, 30),
      turning([240, 104], 58, 215, 330),
      circle([296, 92], 8, { fill: 'ink' }),
      armFromAbove([280, 320], 4, 1, [356, 184], 4),
      handFromAbove({ wrist: [354, 180], to: 128, scale: 6.4, pose: 'pinch' }),
    ],
  },
  wringing: {
    title: 'Wringing a cloth, seen from the client',
    words:
      'Two hands twist a wet cloth between them above a measuring jug; drops fall into the jug. Beside the jug stands the bowl with water from which the cloth was taken. Arrows at both ends show that the hands turn against each other.',
    oneHand: false,
    shapes: [
      floorLine(TABLE_TOP),
      path('M300 200c4 34 22 50 44 50h48c22 0 40 -16 44 -50z', { fill: 'light' }),
      curve(
        [
          [308, 214],
          [340, 208],
          [372, 214],
          [404, 208],
          [430, 214],
        ],
        { line: 'thin' },
      ),
      box(190, 160, 84, 90, { fill: 'paper', round: 4 }),
      ...[180, 200, 220].map((y) =>
        line(
          [
            [190, y],
            [206, y],
          ],
          { line: 'thin' },
        ),
      ),
      box(164, 62, 150, 30, { fill: 'mid', round: 12 }),
      ...[186, 210, 234, 258, 282].map((x) =>
        line(
          [
            [x, 62],
            [x + 14, 92],
          ],
          { line: 'thin' },
        ),
      ),
      ...[
        [222, 112],
        [240, 128],
        [232, 148],
        [250, 106],
      ].map(([x = 0, y = 0]) =>
        line([
          [x, y],
          [x, y + 8],
        ]),
      ),
      moved([306, 78], pinching([0, 0], 0.36, 44)),
      `<g transform="translate(172 78) scale(-1 1)">${pinching([0, 0], 0.36, 44)}</g>`,
      turning([372, 72], 66, 60, 110),
      turning([108, 80], 66, 240, 290),
    ],
  },
}
