import { limb } from '../body.ts'
import { pinching } from '../grips.ts'
import { handFromAbove } from '../hand-from-above.ts'
import {
  arrow,
  box,
  circle,
  curve,
  type Figures,
  floorLine,
  lift,
  line,
  type Point,
  polygon,
  type Shape,
  steps,
  turned,
} from '../pen.ts'
import { clientAt, clip, key, onTable, SCALE, table } from '../things.ts'

const [SHEET_LEFT, SHEET_TOP] = onTable(-30, 36)
const [BOX_LEFT, BOX_TOP] = onTable(-4, 24)
const nut = ([x, y]: Point, r: number): Shape =>
  polygon(
    [0, 60, 120, 180, 240, 300].map(
      (a): Point => [x + r * Math.cos((a * Math.PI) / 180), y + r * Math.sin((a * Math.PI) / 180)],
    ),
    { fill: 'mid' },
  ) + circle([x, y], r * 0.4, { fill: 'paper', line: 'thin' })
const OBJECTS: Shape = [
  nut(onTable(12, 30), 8),
  circle(onTable(19, 32), 8, { fill: 'mid' }),
  clip(onTable(26, 30), 1, 30),
  key(onTable(10, 21), 0.8),
  line([onTable(16, 25), onTable(20, 27.5)], { line: 'thick' }),
  circle(onTable(25, 24), 6.5, { fill: 'mid' }),
  circle(onTable(18, 19), 8, { fill: 'mid' }) + circle(onTable(18, 19), 3, { fill: 'paper', line: 'thin' }),
  nut(onTable(26, 18), 6),
  clip(onTable(14, 14), 1.1, 80),
  box(...onTable(22, 14), 11, 11, { fill: 'mid' }),
  line([onTable(8, 13), onTable(11, 15)], { line: 'thick' }),
  curve([onTable(26, 12.5), onTable(28, 13.5), onTable(29, 11), onTable(26, 10.5)], { line: 'plain' }),
].join('')
const BOX_CUT: Shape = line([
  [16, 186],
  [16, 236],
  [92, 236],
  [92, 186],
])

export const figures: Figures = {
  seated_at_sheet: {
    title: 'Seated at the sheet, seen from above',
    words:
      'The client sits at a table with a desk sheet of 60 by 30 cm on it. The box stands in the middle of the sheet. The objects lie strewn on the side of the hand under test, near the box. The other hand rests on the lap.',
    oneHand: true,
    shapes: [
      table(),
      box(SHEET_LEFT, SHEET_TOP, 60 * SCALE, 30 * SCALE, { fill: 'paper', line: 'thin' }),
      box(BOX_LEFT, BOX_TOP, 8 * SCALE, 5 * SCALE, { fill: 'light' }) +
        box(BOX_LEFT + 4, BOX_TOP + 4, 8 * SCALE - 8, 5 * SCALE - 8, { fill: 'mid', line: 'thin' }),
      OBJECTS,
      clientAt({ hand: [20, -6], to: 92 }),
    ],
  },
  picking_up: {
    title: 'Picking up and putting into the box, in three steps',
    words:
      'Seen from the client’s side, the box cut open. First: the digits pick one small nut up from the table; it is not slid to the edge. Second: it is carried over the side of the box. Third: it is let go in the box, and the hand comes back for the next one.',
    oneHand: true,
    shapes: steps([
      [floorLine(236), BOX_CUT, nut([122, 228], 8), turned(-46, [122, 226], pinching([122, 226], 0.34, 16))],
      [
        floorLine(236),
        BOX_CUT,
        nut([56, 140], 8),
        turned(-38, [56, 138], pinching([56, 138], 0.34, 16)),
        lift([124, 220], [112, 150], [74, 140]),
      ],
      [
        floorLine(236),
        BOX_CUT,
        nut([56, 226], 8),
        turned(-38, [56, 162], pinching([56, 162], 0.34, 40)),
        arrow(
          [
            [56, 180],
            [56, 210],
          ],
          { line: 'thin' },
        ),
      ],
    ]),
  },
  fingers_bound: {
    title: 'Ring and little finger out of the way',
    words:
      'The hand under test, its palm towards the reader. Ring finger and little finger are folded into the palm and held there by two strips of soft tape. Thumb, index and middle finger are free.',
    oneHand: true,
    shapes: [
      limb(
        [
          [240, 250],
          [240, 340],
        ],
        [27, 33],
      ),
      handFromAbove({ wrist: [240, 244], to: 90, scale: 11.5, palmUp: true, pose: 'two_free' }),
      line(
        [
          [190, 158],
          [238, 162],
        ],
        { line: 'thick' },
      ),
      line(
        [
          [190, 176],
          [236, 180],
        ],
        { line: 'thick' },
      ),
    ],
  },
}
