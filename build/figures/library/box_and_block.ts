import { pinching } from '../grips.ts'
import {
  arrow,
  box,
  type Figures,
  label,
  lift,
  line,
  panels,
  type Point,
  right,
  type Shape,
  steps,
  wrong,
} from '../pen.ts'
import { clientAt, cube, onTable, SCALE, table } from '../things.ts'

/** The box is 53.7 by 25.4 cm; here it lies 4 cm from the edge. */
const [LEFT, FAR] = onTable(-26.85, 29.4)
const BOX: Shape = box(LEFT, FAR, 53.7 * SCALE, 25.4 * SCALE, { fill: 'paper', round: 2 })
const PARTITION: Shape = line([onTable(0, 30.5), onTable(0, 3)], { line: 'thick' })
const BLOCKS: Shape = Array.from({ length: 24 }, (_, index) => {
  const row = Math.floor(index / 6)
  return cube(
    onTable(4 + (index % 6) * 3.9 + (row % 2) * 0.8, 8 + row * 5.6 + (index % 3) * 0.8),
    2.5 * SCALE,
  )
}).join('')

/** The box cut open, seen from the client's side: the blocks begin on the right of the partition. */
const CUT: Shape =
  line([
    [14, 186],
    [14, 240],
    [146, 240],
    [146, 186],
  ]) +
  line(
    [
      [80, 240],
      [80, 134],
    ],
    { line: 'thick' },
  )
const LEFT_OVER: Shape = [
  [96, 231],
  [118, 231],
  [136, 231],
  [108, 213],
]
  .map(([x = 0, y = 0]) => cube([x, y], 16))
  .join('')
const carrying = (at: Point, ...held: readonly Shape[]): Shape => held.join('') + pinching(at, 0.32, 46)

export const figures: Figures = {
  seated_at_box: {
    title: 'Seated at the box, seen from above',
    words:
      'The box lies lengthwise along the table edge, its partition in front of the middle of the client. All blocks are in the half on the side of the hand under test. The other hand lies beside the box. The examiner sits opposite.',
    oneHand: true,
    shapes: [
      table(),
      BOX,
      BLOCKS,
      PARTITION,
      label(onTable(-13.4, 31.5), '25.4 cm'),
      label(onTable(13.4, 31.5), '25.4 cm'),
      clientAt({ hand: [17, -3], to: 100, other: [-33, -3] }),
    ],
  },
  carrying_over: {
    title: 'How a block is carried, in three steps',
    words:
      'The box is cut open and seen from the client’s side. First: thumb and fingers take one block from the half on the side of the hand under test. Second: it is lifted over the partition, and the fingertips go across with it. Third: it is let go in the other half, and the hand comes back for the next one.',
    oneHand: true,
    shapes: steps([
      [CUT, LEFT_OVER, carrying([100, 190], cube([100, 190], 16))],
      [
        CUT,
        LEFT_OVER,
        carrying([70, 108], cube([70, 108], 16)),
        arrow(
          [
            [118, 60],
            [84, 44],
            [46, 56],
          ],
          { line: 'thin' },
        ),
      ],
      [
        CUT,
        LEFT_OVER,
        carrying([48, 150]),
        cube([44, 231], 16),
        arrow(
          [
            [44, 186],
            [44, 214],
          ],
          { line: 'thin' },
        ),
      ],
    ]),
  },
  crossing: {
    title: 'When a block counts, in three drawings',
    words:
      'The box is cut open and seen from the client’s side; the hand comes from the side where all blocks began. First: the fingertips with the block have passed over the partition before it is let go: it counts. Second: the block is thrown and the fingertips stay on the near side: it does not count. Third: two blocks are carried at once: they count as one.',
    oneHand: true,
    shapes: [
      ...panels([
        [
          CUT,
          carrying([56, 110], cube([56, 110], 16)),
          arrow(
            [
              [56, 134],
              [56, 172],
            ],
            { line: 'thin' },
          ),
        ],
        [CUT, carrying([108, 110]), lift([94, 104], [66, 84], [40, 116]), cube([36, 132], 16)],
        [
          CUT,
          carrying([56, 110], cube([48, 110], 16), cube([64, 110], 16)),
          arrow(
            [
              [56, 134],
              [56, 172],
            ],
            { line: 'thin' },
          ),
        ],
      ]),
      right([80, 262]),
      wrong([240, 260]),
      label([400, 268], '2 → 1'),
    ],
  },
}
