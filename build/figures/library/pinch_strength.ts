import { chair, floorUnder, jointsOf, limb, seated } from '../body.ts'
import { keyPinching, pinching } from '../grips.ts'
import { type Figures, floorLine, label, line, type Point, type Shape, steps } from '../pen.ts'
import { dial, pinchGauge } from '../things.ts'

const HIP: Point = [120, 178]
const SIDE = { hip: HIP, scale: 2, upperArm: -88, forearm: 0 }
const { elbow, fingertip } = jointsOf(SIDE)
const [TIP_X, TIP_Y] = fingertip

const tip = (at: Point, k: number): Shape => pinchGauge(at, k) + pinching(at, k * 1.05, 10)
const keyed = (at: Point, k: number): Shape => pinchGauge(at, k) + keyPinching(at, k)
const palmar = (at: Point, k: number): Shape => pinchGauge(at, k) + pinching(at, k * 1.05, 10, 2)

export const figures: Figures = {
  arm_and_gauge: {
    title: 'Arm and gauge, seen from the side',
    words:
      'The client sits on a chair without arm rests, feet flat. The upper arm hangs by the side, the elbow is at a right angle, the forearm midway with the thumb up, the wrist straight. The examiner holds the far end of the gauge lightly, with the safety loop about the fingers, and takes its weight; the dial looks to the examiner.',
    oneHand: true,
    shapes: [
      chair(HIP, 2),
      floorLine(floorUnder(HIP, 2)),
      seated(SIDE),
      line([
        [TIP_X - 4, TIP_Y - 2],
        [TIP_X + 62, TIP_Y - 2],
      ]),
      line([
        [TIP_X - 4, TIP_Y + 3],
        [TIP_X + 62, TIP_Y + 3],
      ]),
      dial([TIP_X + 80, TIP_Y], 19),
      limb(
        [
          [TIP_X + 200, TIP_Y + 24],
          [TIP_X + 140, TIP_Y + 10],
          [TIP_X + 98, TIP_Y + 3],
        ],
        [9, 7, 5],
      ),
      line(
        [
          [TIP_X + 88, TIP_Y + 18],
          [TIP_X + 104, TIP_Y + 34],
          [TIP_X + 120, TIP_Y + 10],
        ],
        { line: 'thin' },
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
  tip_pinch: {
    title: 'Tip pinch, seen from the thumb side',
    words:
      'Tip of the thumb and tip of the index finger press on the two pads of the gauge and make a round. The other fingers are loosely bent and do not help.',
    oneHand: true,
    shapes: [tip([214, 132], 0.9)],
  },
  key_pinch: {
    title: 'Key pinch, seen from the palm side',
    words:
      'The gauge lies on the thumb side of the bent index finger, at its middle segment. The pad of the thumb presses on it from above, as on a key. The other fingers are bent beneath the index finger and support it.',
    oneHand: true,
    shapes: [keyed([214, 112], 0.9)],
  },
  palmar_pinch: {
    title: 'Palmar pinch, seen from the thumb side',
    words:
      'The pad of the thumb presses on one pad of the gauge, the pads of index and middle finger together on the other. Ring and little finger are loosely bent and do not help.',
    oneHand: true,
    shapes: [palmar([214, 132], 0.9)],
  },
  three_pinches: {
    title: 'The three pinches, in the order they come',
    words:
      'First, the tip pinch: tip of the thumb against tip of the index finger, making a round. Second, the key pinch: the thumb from above on the side of the bent index finger. Third, the palmar pinch: the pad of the thumb against the pads of index and middle finger. Each is squeezed for about three seconds and let go.',
    oneHand: true,
    shapes: steps([[tip([70, 140], 0.3)], [keyed([70, 130], 0.3)], [palmar([70, 140], 0.3)]]),
  },
}
