import { chair, examinerAcross, floorUnder, jointsOf, limb, seated } from '../body.ts'
import { gripping, keyPinching, pinching } from '../grips.ts'
import { handFromAbove } from '../hand-from-above.ts'
import {
  box,
  circle,
  type Figures,
  floorLine,
  lift,
  type Point,
  type Shape,
  steps,
  turned,
  twoRows,
} from '../pen.ts'

const HIP: Point = [120, 174]
const S = 1.9
const ON_LAP = { hip: HIP, scale: S, upperArm: -72, forearm: -14, hand: -8 }
const ON_KNEE = { hip: HIP, scale: S, upperArm: -56, forearm: -24, hand: -14 }
const TO_NOSE = { hip: HIP, scale: S, upperArm: -26, forearm: 118, hand: 128 }

/** The finger joints bent, the knuckles straight. */
const hook: Shape =
  limb(
    [
      [180, 86],
      [110, 80],
    ],
    [22, 25],
  ) +
  [0, 1, 2, 3]
    .map((i) =>
      limb(
        [
          [106, 62 + i * 12],
          [62, 60 + i * 12],
          [48, 70 + i * 12],
          [60, 78 + i * 12],
        ],
        [8, 7.5, 7, 6],
      ),
    )
    .join('') +
  limb(
    [
      [126, 66],
      [100, 46],
      [76, 44],
    ],
    [10, 8, 6],
  )

const HAND_ITEMS: readonly (readonly Shape[])[] = [
  [hook],
  [box(6, 40, 66, 46, { fill: 'light' }), keyPinching([62, 60], 0.3)],
  [turned(8, [60, 66], box(56, 14, 8, 104, { fill: 'mid', round: 3 })), pinching([60, 68], 0.36, 16)],
  [box(44, 12, 40, 112, { fill: 'mid', round: 5 }), gripping([66, 70], 0.5)],
  [circle([58, 70], 32, { fill: 'mid' }), pinching([62, 70], 0.44, 116, 2)],
  [
    limb(
      [
        [150, 100],
        [176, 132],
      ],
      [14, 18],
    ),
    handFromAbove({ wrist: [126, 110], to: 122, scale: 5.6, palmUp: true }),
  ],
]

export const figures: Figures = {
  seated_facing: {
    title: 'Client and examiner facing each other',
    words:
      'The client sits upright on a chair with a back, both feet on the floor, the hand under test on the lap. The examiner sits opposite, facing the client, and shows each movement first.',
    oneHand: true,
    shapes: [
      chair(HIP, S),
      floorLine(floorUnder(HIP, S)),
      seated(ON_LAP),
      box(366, floorUnder(HIP, S) - 72, 66, 72, { fill: 'light' }),
      limb(
        [
          [396, 178],
          [340, 184],
          [342, 256],
          [322, 259],
        ],
        [15, 12, 8, 5],
      ),
      examinerAcross(398, floorUnder(HIP, S), [306, 116]),
    ],
  },
  grasps: {
    title: 'Hand items: the grasps, and opening the hand',
    words:
      'Six drawings of the hand under test, for the hand items alone. Above: the hook, knuckles straight and finger joints bent; paper held between the straight thumb and the index finger; a pencil between the tips of thumb and index finger. Below: a small can held in the hand; a tennis ball held in the hand; the hand that opens.',
    oneHand: true,
    shapes: twoRows(HAND_ITEMS.slice(0, 3), HAND_ITEMS.slice(3)),
  },
  finger_to_nose: {
    title: 'From the knee to the nose, seen from the side',
    words:
      'The client sits with the eyes covered. First: the hand under test lies on the knee. Second: the fingertip is at the tip of the nose. Five times to the nose and back, as fast as possible.',
    oneHand: true,
    shapes: steps(
      [ON_KNEE, TO_NOSE].map((arm, index) => {
        const hip: Point = [84, 174]
        const at = jointsOf({ ...arm, hip })
        return [
          chair(hip, S),
          floorLine(floorUnder(hip, S), 4, 236),
          seated({ ...arm, hip }),
          box(at.head[0] - 8, at.head[1] - 8, 30, 9, { fill: 'ink', round: 3 }),
          index === 0
            ? lift(
                [at.fingertip[0], at.fingertip[1] - 14],
                [at.fingertip[0] + 4, at.head[1] + 50],
                [at.head[0] + 34, at.head[1] + 8],
              )
            : [0, 1, 2, 3, 4].map((i) => circle([84 + i * 18, 12], 5)).join(''),
        ]
      }),
    ),
  },
}
