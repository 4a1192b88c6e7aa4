import { armFromSide, joined, jointsOf, limb, seated } from '../body.ts'
import { handFromAbove } from '../hand-from-above.ts'
import {
  away,
  box,
  circle,
  type Figures,
  floorLine,
  label,
  line,
  panels,
  type Point,
  type Shape,
  turning,
} from '../pen.ts'
import { tableFromSide } from '../things.ts'

const PIVOT = { fill: 'paper' } as const
/** The instrument: the pivot on the joint, the still arm, and the moving arm. */
const goniometer = (pivot: Point, still: Point, moving: Point): Shape =>
  line([still, pivot], { line: 'thick' }) + line([pivot, moving], { line: 'thick' }) + circle(pivot, 7, PIVOT)

const PLINTH = tableFromSide(20, 196, 440, 262)
const TOWEL = (at: Point): Shape => circle(at, 9, { fill: 'mid' }) + circle(at, 4, { line: 'thin' })
/** Somebody on the back, head on the left, knees bent. */
const lyingDown: Shape =
  limb(
    [
      [118, 176],
      [292, 178],
    ],
    [19, 19],
  ) +
  limb(
    [
      [292, 176],
      [352, 120],
      [398, 186],
    ],
    [17, 13, 8],
  ) +
  limb(
    [
      [398, 186],
      [424, 189],
    ],
    [7, 5],
  ) +
  circle([78, 172], 20, { fill: 'paper' }) +
  line([
    [74, 152],
    [78, 147],
    [82, 152],
  ])

/** An arm with its elbow, in a field of 160: `degrees` is how far it is from straight. */
const zero = (degrees: number, sign: string): Shape[] => {
  const elbow: Point = [64, 140]
  const wrist = away(elbow, 92, -90 + degrees)
  return [
    limb([[64, 36], elbow, wrist], [15, 12, 9]),
    line([elbow, [64, 244]], { line: 'thin', dashed: true }),
    goniometer(elbow, [64, 60], away(elbow, 80, -90 + degrees)),
    label([128, 146], sign),
  ]
}

const BACK = { hip: [250, 196] as Point, scale: 1.9, upperArm: -132, forearm: -122 }

export const figures: Figures = {
  neutral_zero: {
    title: 'What is 0, and what is written with a sign',
    words:
      'Three arms seen from the side, upper arm upright, the instrument on the elbow. First: the forearm lacks some degrees to straight, which is written with a minus. Second: the arm is straight, which is 0. Third: the forearm goes beyond straight, which is written with a plus.',
    oneHand: true,
    shapes: panels([zero(22, '−'), zero(0, '0'), zero(-12, '+')]),
  },
  shoulder_back: {
    title: 'The shoulder going back, seen from the side',
    words:
      'The client sits upright, back free. The arm, slightly bent at the elbow, goes straight back. The pivot lies on the side of the shoulder, the still arm of the instrument along the middle of the trunk’s side, the moving arm along the humerus.',
    oneHand: true,
    shapes: [
      box(226, 191, 96, 71, { fill: 'light' }),
      floorLine(262),
      seated({ ...BACK, hip: [250, 172] }),
      ...backOf([250, 172]),
    ],
  },
  lying_arm_out: {
    title: 'The shoulder turning, lying down',
    words:
      'The client lies on the back, knees bent. The upper arm lies out at 90 degrees, towards the reader, on a rolled towel so that it is level; the elbow is bent at 90 degrees and the forearm points up. One arrow shows the outward turn, towards the head; the other the inward turn, towards the feet. The pivot lies at the tip of the elbow, the still arm upright.',
    oneHand: true,
    shapes: [
      PLINTH,
      lyingDown,
      TOWEL([140, 190]),
      limb(
        [
          [140, 176],
          [140, 84],
        ],
        [15, 11],
      ),
      limb(
        [
          [140, 84],
          [140, 50],
        ],
        [9, 6],
      ),
      circle([140, 178], 17, { fill: 'paper' }),
      line(
        [
          [140, 178],
          [140, 34],
        ],
        { line: 'thin', dashed: true },
      ),
      goniometer([140, 178], [140, 104], [140, 104]),
      turning([140, 178], 120, 96, 128),
      turning([140, 178], 120, 84, 52),
    ],
  },
  elbow_on_towel: {
    title: 'The elbow bending, lying down',
    words:
      'The client lies on the back. The upper arm rests beside the body on a rolled towel, palm up. The forearm bends at the elbow; an arrow shows bending and straightening. The pivot lies on the outer epicondyle, the still arm along the humerus, the moving arm along the radius.',
    oneHand: true,
    shapes: [
      PLINTH,
      lyingDown,
      TOWEL([214, 190]),
      armFromSide([132, 172], [222, 176], away([222, 176], 78, 62), 2.6, 62),
      line(
        [
          [222, 176],
          [340, 180],
        ],
        { line: 'thin', dashed: true },
      ),
      goniometer([222, 176], [150, 173], away([222, 176], 66, 62)),
      turning([222, 176], 104, 2, 54, { both: true }),
    ],
  },
  forearm_turning: {
    title: 'The forearm turning, seen from its end',
    words:
      'The upper arm is at the side, the elbow at 90 degrees; the hand under test is seen from its fingertips, as by an examiner in front, with the thumb up, which is 0. The arrow away from the body shows the palm turning up, the arrow towards the body the palm turning down. The instrument lies across the wrist.',
    oneHand: true,
    shapes: [
      limb(
        [
          [336, 92],
          [336, 250],
        ],
        [56, 50],
      ),
      circle([336, 6], 26, { fill: 'paper' }),
      line(
        [
          [180, 60],
          [180, 214],
        ],
        { line: 'thin', dashed: true },
      ),
      limb(
        [
          [180, 110],
          [180, 190],
        ],
        [24, 20],
      ),
      limb(
        [
          [180, 96],
          [178, 70],
        ],
        [12, 9],
      ),
      ...[118, 140, 162, 182].map((y) => circle([176, y], 11, { fill: 'paper' })),
      line(
        [
          [204, 100],
          [204, 204],
        ],
        { line: 'thick' },
      ),
      turning([180, 150], 104, 96, 160),
      turning([180, 150], 84, 84, 40),
    ],
  },
  hand_over_edge: {
    title: 'The wrist over the edge of the table',
    words:
      'The forearm rests on the table, palm down, the hand over its edge, the fingers free; seen from the side of the little finger. Arrows show the hand bending down and up. The pivot lies on the ulnar side of the wrist, the still arm along the ulna, the moving arm along the fifth metacarpal.',
    oneHand: true,
    shapes: [
      tableFromSide(10, 168, 250, 262),
      limb(
        [
          [0, 140],
          [262, 142],
        ],
        [34, 23],
      ),
      limb(
        [
          [262, 142],
          [330, 142],
          [380, 146],
          [432, 152],
        ],
        [22, 20, 11, 8],
      ),
      goniometer([268, 144], [130, 146], [344, 146]),
      turning([268, 144], 178, 8, 42),
      turning([268, 144], 178, -12, -40),
    ],
  },
  finger_on_back: {
    title: 'The finger goniometer on the back of a joint',
    words:
      'A finger bent at its middle joint, seen from the side. One arm of the finger goniometer lies on the back of the bone before the joint, the other on the back of the bone behind it, the pivot over the joint. A broken line shows where straight would be, an arrow the bending.',
    oneHand: true,
    shapes: [
      joined([
        [
          [
            [480, 156],
            [350, 142],
          ],
          [64, 48],
        ],
        [
          [
            [350, 132],
            [206, 126],
            [150, 206],
            [170, 250],
          ],
          [32, 26, 20, 16],
        ],
      ]),
      goniometer([188, 104], [320, 96], [130, 192]),
      line(
        [
          [188, 104],
          [50, 112],
        ],
        { line: 'thin', dashed: true },
      ),
      turning([188, 104], 112, 190, 220),
    ],
  },
  thumb_free: {
    title: 'The thumb, its motions',
    words:
      'Two drawings of the hand under test. First, the forearm on the table midway with the thumb up: the joints of the thumb bend and straighten in the plane of the palm. Second, the palm flat on the table: the thumb goes out to the side, away from the index finger; the moving arm of the instrument lies along its metacarpal, the still arm along that of the index finger.',
    oneHand: true,
    shapes: panels([
      [
        floorLine(206, 4, 236),
        joined([
          [
            [
              [240, 160],
              [130, 160],
            ],
            [38, 42],
          ],
          [
            [
              [140, 164],
              [60, 178],
              [20, 186],
            ],
            [30, 20, 11],
          ],
        ]),
        limb(
          [
            [150, 140],
            [116, 96],
            [92, 62],
            [78, 34],
          ],
          [20, 15, 13, 10],
        ),
        goniometer([102, 88], [138, 136], [76, 42]),
        turning([116, 96], 64, 132, 168),
      ],
      [
        box(6, 14, 228, 212, { fill: 'light', round: 3 }),
        limb(
          [
            [134, 236],
            [140, 330],
          ],
          [22, 28],
        ),
        handFromAbove({ wrist: [134, 232], to: 90, scale: 9.6 }),
        goniometer([114, 206], [106, 146], [84, 178]),
        turning([114, 206], 92, 112, 150),
      ],
    ]),
  },
}

/** What lies on the shoulder of somebody whose arm goes back. */
function backOf(hip: Point): Shape[] {
  const { shoulder, elbow } = jointsOf({ ...BACK, hip })
  return [
    line([shoulder, [shoulder[0], hip[1]]], { line: 'thin', dashed: true }),
    goniometer(shoulder, [shoulder[0], shoulder[1] + 62], elbow),
    turning(shoulder, 84, -94, -126),
  ]
}
