import { armFromAbove, chair, floorUnder, fromAbove, jointsOf, limb, seated } from '../body.ts'
import { gripping } from '../grips.ts'
import { handFromAbove } from '../hand-from-above.ts'
import {
  arrow,
  box,
  circle,
  type Figures,
  floorLine,
  label,
  line,
  moved,
  type Point,
  steps,
  turning,
} from '../pen.ts'
import { dial, dynamometer } from '../things.ts'

const HIP: Point = [170, 178]
const SIDE = { hip: HIP, scale: 2, upperArm: -88, forearm: 0, withoutHand: true }
const { wrist, elbow } = jointsOf(SIDE)
const HELD: Point = [wrist[0] + 18, wrist[1]]

export const figures: Figures = {
  second_position: {
    title: 'The handle in the second position',
    words:
      'The dynamometer from its front. The movable handle is set to the second of five notches, counted from the side nearest to the fixed post; an arrow points to it. Both ends of the handle lie in the same notch.',
    oneHand: false,
    shapes: [
      box(120, 30, 200, 22, { fill: 'mid', round: 8 }),
      line([
        [320, 41],
        [352, 41],
      ]),
      dial([388, 41], 34),
      ...[140, 290].flatMap((x) => [
        box(x, 52, 12, 200, { fill: 'light' }),
        ...[92, 124, 156, 188, 220].map((y) =>
          line(
            [
              [x, y],
              [x + 12, y],
            ],
            { line: 'thin' },
          ),
        ),
      ]),
      box(120, 113, 200, 22, { fill: 'mid', round: 8 }),
      ...[92, 124, 156, 188, 220].map((y, index) => label([345, y + 6], String(index + 1))),
      arrow([
        [50, 124],
        [108, 124],
      ]),
    ],
  },
  arm_from_the_side: {
    title: 'Arm and dynamometer, seen from the side',
    words:
      'The client sits on a chair without arm rests, feet flat. The upper arm hangs by the side, the elbow is at a right angle, the forearm midway with the thumb up, the wrist straight. The dynamometer is upright in the hand and touches neither table, thigh nor chair; its dial looks away from the client.',
    oneHand: true,
    shapes: [
      chair(HIP, 2),
      floorLine(floorUnder(HIP, 2)),
      seated(SIDE),
      dynamometer(HELD, 0.3),
      limb(
        [
          [wrist[0], wrist[1]],
          [HELD[0], HELD[1] - 8],
        ],
        [6, 6],
      ),
      ...[-9, -3, 3, 9].map((y) =>
        limb(
          [
            [HELD[0] - 8, HELD[1] + y],
            [HELD[0] + 8, HELD[1] + y],
          ],
          [3.4, 3.4],
        ),
      ),
      line(
        [
          [elbow[0], elbow[1] - 20],
          [elbow[0] + 18, elbow[1] - 20],
          [elbow[0] + 18, elbow[1] - 4],
        ],
        { line: 'thin' },
      ),
      label([elbow[0] + 36, elbow[1] - 18], '90°'),
    ],
  },
  seated_gripping: {
    title: 'Seated with the dynamometer, seen from above',
    words:
      'The arm of the hand under test is by the side with the elbow bent; the forearm points straight ahead and holds the dynamometer in front of the shoulder, clear of the body. The other hand rests on the lap.',
    oneHand: true,
    shapes: [
      box(160, 176, 160, 96, { fill: 'light', round: 6 }),
      armFromAbove([240, 220], 4, -1, [186, 168], 8),
      handFromAbove({ wrist: [186, 168], to: 10, scale: 3.4, pose: 'resting', left: true }),
      limb(
        [
          [308, 224],
          [312, 206],
          [312, 116],
        ],
        [22, 17, 11],
      ),
      box(296, 72, 32, 14, { fill: 'mid', round: 5 }),
      box(296, 94, 32, 14, { fill: 'mid', round: 5 }),
      line([
        [312, 72],
        [312, 58],
      ]),
      dial([312, 36], 22),
      ...[300, 312, 324].map((x) =>
        limb(
          [
            [x, 78],
            [x, 108],
          ],
          [5.5, 6],
        ),
      ),
      limb(
        [
          [300, 112],
          [324, 112],
        ],
        [9, 9],
      ),
      fromAbove([240, 222], 4),
    ],
  },
  squeezing: {
    title: 'One squeeze in three steps',
    words:
      'A hand about the handle, from its palm side, thumb up. First: fingers and thumb lie about the handle without force, the needle at zero. Second: the hand squeezes as hard as it can for about three seconds, breathing out, without a jerk. Third: it lets go; the peak needle stays, is read, and is set back to zero.',
    oneHand: true,
    shapes: steps([
      [dynamometer([60, 170], 0.5), gripping([62, 170], 0.5)],
      [
        dynamometer([60, 170], 0.5),
        gripping([60, 170], 0.5),
        arrow([
          [8, 170],
          [30, 170],
        ]),
        arrow([
          [152, 118],
          [128, 132],
        ]),
        label([112, 250], '3 s'),
      ],
      [
        dynamometer([60, 170], 0.5),
        moved([34, 12], gripping([82, 160], 0.5)),
        circle([60, 114], 4, { fill: 'ink' }),
        turning([60, 114], 24, 40, 150, { line: 'thin' }),
        label([112, 268], '→ 0'),
      ],
    ]),
  },
}
