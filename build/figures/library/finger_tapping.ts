import { limb } from '../body.ts'
import { lying } from '../grips.ts'
import { handFromAbove } from '../hand-from-above.ts'
import { arrow, box, circle, type Figures, line, type Shape, steps } from '../pen.ts'

const KEY: Shape = box(176, 30, 34, 34, { fill: 'mid', round: 5 })
const down = (lifted: number, key: number): Shape[] => [
  line([
    [8, 214],
    [234, 214],
  ]),
  box(26, 204 + key, 34, 10 - key, { fill: 'mid', round: 2 }),
  lying([40, 203 + key], 0.5, lifted),
  circle([103, 187 + key * 0.3], 4, { fill: 'paper' }),
]

export const figures: Figures = {
  hand_on_table: {
    title: 'The hand on the table, seen from above',
    words:
      'Forearm and palm rest on the table, palm down. The key lies in front of the shoulder of the hand under test, the index finger over it. The other fingers and the thumb rest on the table.',
    oneHand: true,
    shapes: [
      box(14, 10, 452, 262, { fill: 'light', round: 3 }),
      KEY,
      limb(
        [
          [226, 226],
          [240, 330],
        ],
        [28, 38],
      ),
      handFromAbove({ wrist: [226, 222], to: 90, scale: 11 }),
    ],
  },
  from_the_knuckle: {
    title: 'Only the index finger moves, from its knuckle',
    words:
      'The hand from its thumb side, in two steps that go on and on. First: the index finger presses the key. Second: it is lifted from the knuckle, so that the key comes up freely. Palm, thumb and the other fingers stay on the table in both.',
    oneHand: true,
    shapes: steps([
      [
        ...down(0, 6),
        arrow(
          [
            [40, 132],
            [40, 172],
          ],
          { line: 'thin' },
        ),
      ],
      [
        ...down(44, 0),
        arrow(
          [
            [40, 172],
            [40, 132],
          ],
          { line: 'thin' },
        ),
      ],
    ]),
  },
}
