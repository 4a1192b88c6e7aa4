import { chair, floorUnder, jointsOf, limb, seated } from '../body.ts'
import { pinching } from '../grips.ts'
import { handFromAbove } from '../hand-from-above.ts'
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
  moved,
  panels,
  type Point,
  type Shape,
  steps,
  turned,
} from '../pen.ts'
import { cube, cup, tableFromSide } from '../things.ts'

const HIP: Point = [96, 172]
const S = 1.9
const AT_TABLE = { hip: HIP, scale: S, upperArm: -46, forearm: -3, hand: -6 }
const { wrist } = jointsOf(AT_TABLE)
const TOP = wrist[1] + 9
/** 37 cm, as high as the shelf stands above the table. */
const SHELF = TOP - 37 * S

const SMALL = { hip: [34, 190] as Point, scale: 1.12, trunk: 90 }
const lap = { ...SMALL, upperArm: -74, forearm: -16, hand: -10 }
const gross = (upperArm: number, forearm: number, hand: number): Shape =>
  chair(SMALL.hip, SMALL.scale) + seated({ ...SMALL, upperArm, forearm, hand })

export const figures: Figures = {
  table_and_shelf: {
    title: 'Chair, table and shelf, seen from the side',
    words:
      'The client sits on a chair without arm rests, back against its back, feet on the floor, the table close. The shelf stands 37 cm above the table, within reach of the arm. A broken line leads from a block on the table up onto the shelf.',
    oneHand: true,
    shapes: [
      chair(HIP, S),
      floorLine(floorUnder(HIP, S)),
      tableFromSide(150, TOP, 270, floorUnder(HIP, S)),
      line([
        [316, TOP],
        [316, SHELF + 6],
      ]),
      line([
        [404, TOP],
        [404, SHELF + 6],
      ]),
      box(302, SHELF, 116, 6, { fill: 'light' }),
      seated(AT_TABLE),
      cube([272, TOP - 10], 19),
      lift([276, TOP - 26], [292, SHELF - 30], [340, SHELF - 24]),
      cube([352, SHELF - 10], 19),
      distance([438, TOP], [438, SHELF], '37 cm', [438, SHELF - 12]),
    ],
  },
  starting_postures: {
    title: 'Where the hand begins',
    words:
      'Two drawings. First, for grasp, grip and pinch, seen from above: the hand under test lies on the table, palm down, the thing in front of it. Second, for gross movement, seen from the side: nothing on the table, the hands lie on the lap, palms down.',
    oneHand: true,
    shapes: panels([
      [
        box(12, 14, 216, 170, { fill: 'light', round: 3 }),
        cube([128, 44], 34),
        limb(
          [
            [128, 196],
            [136, 300],
          ],
          [17, 24],
        ),
        handFromAbove({ wrist: [128, 192], to: 90, scale: 7.4 }),
      ],
      [
        chair([80, 176], 1.8),
        floorLine(floorUnder([80, 176], 1.8), 4, 236),
        seated({ ...lap, hip: [80, 176], scale: 1.8 }),
      ],
    ]),
  },
  four_parts: {
    title: 'The four parts, one picture each',
    words:
      'First, grasp: a cube is taken from the table and lifted onto the shelf. Second, grip: water is poured from one cup into another by turning the forearm. Third, pinch: a small ball is held between thumb and one fingertip. Fourth, gross movement: the hand goes from the lap behind the head; onto the head and to the mouth are done from the same start.',
    oneHand: true,
    shapes: steps([
      [
        floorLine(244),
        line([
          [16, 244],
          [16, 110],
        ]),
        box(2, 104, 58, 6, { fill: 'light' }),
        cube([84, 232], 24),
        turned(-34, [84, 226], pinching([84, 226], 0.28, 78)),
        lift([62, 214], [52, 78], [30, 88]),
      ],
      [
        floorLine(244),
        cup([34, 244], 1.5, -1),
        turned(-58, [74, 176], cup([74, 190], 1.5, -1)),
        moved([92, 168], pinching([0, 0], 0.26, 86)),
        arrow(
          [
            [42, 174],
            [36, 206],
          ],
          { line: 'thin' },
        ),
      ],
      [
        floorLine(244),
        ellipse([40, 240], 28, 6, { fill: 'light' }),
        circle([68, 190], 5, { fill: 'mid' }),
        turned(-34, [68, 190], pinching([68, 190], 0.3, 14)),
      ],
      [
        gross(62, 150, 170),
        arrow(
          [
            [84, 160],
            [90, 110],
            [74, 84],
          ],
          { line: 'thin', dashed: true },
        ),
      ],
    ]),
  },
}
