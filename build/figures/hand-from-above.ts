/** A hand seen from above, in centimetres, drawn by joints and thickness. */
import { cover, joined, type Limb, limb } from './body.ts'
import { ellipse, moved, type Point, type Shape, turned } from './pen.ts'

/** Poses of a hand seen from above, its wrist at 0 0 and its fingers up the page; the palm looks down. */
const POSES = {
  flat: [
    [
      [-2.9, -8.6],
      [-4, -12.4],
      [-4.7, -15.6],
    ],
    [
      [-1, -9.2],
      [-1.2, -13.6],
      [-1.4, -17],
    ],
    [
      [1, -9],
      [1.6, -13],
      [2, -16.2],
    ],
    [
      [2.9, -8],
      [4.2, -11],
      [5.1, -13.6],
    ],
  ],
  pinch: [
    [
      [-2.6, -8.4],
      [-3.4, -12],
      [-4.3, -14.3],
    ],
    [
      [-0.9, -9],
      [-1.8, -12.8],
      [-3, -14.6],
    ],
    [
      [1, -8.8],
      [1.2, -11.6],
      [0.6, -12.6],
    ],
    [
      [2.7, -7.8],
      [3, -10],
      [2.4, -11],
    ],
  ],
  point: [
    [
      [-2.7, -8.4],
      [-2.9, -12.4],
      [-3, -16.2],
    ],
    [
      [-0.9, -9],
      [-0.9, -10.8],
      [-0.9, -11.2],
    ],
    [
      [1, -8.8],
      [1, -10.4],
      [1, -10.8],
    ],
    [
      [2.7, -7.8],
      [2.8, -9.2],
      [2.8, -9.6],
    ],
  ],
  resting: [
    [
      [-2.8, -8.6],
      [-3.3, -12.2],
      [-3.6, -15],
    ],
    [
      [-1, -9.2],
      [-1, -13],
      [-1, -16],
    ],
    [
      [0.9, -9],
      [1.2, -12.8],
      [1.3, -15.4],
    ],
    [
      [2.7, -8],
      [3.4, -11],
      [3.7, -13.2],
    ],
  ],
  /** Ring and little finger folded into the palm. */
  two_free: [
    [
      [-2.9, -8.6],
      [-3.6, -12.4],
      [-4.1, -15.6],
    ],
    [
      [-1, -9.2],
      [-1, -13.6],
      [-1, -17],
    ],
    [
      [1.1, -9],
      [1.3, -9.8],
      [1.2, -5.6],
    ],
    [
      [2.9, -8],
      [3.1, -8.8],
      [2.9, -5.2],
    ],
  ],
} as const satisfies Record<string, readonly (readonly Point[])[]>
const THUMBS: Readonly<Record<keyof typeof POSES, readonly Point[]>> = {
  flat: [
    [-2, -2.4],
    [-5, -5.2],
    [-7, -8.6],
  ],
  pinch: [
    [-2, -2.4],
    [-5, -7.4],
    [-5.2, -13.2],
  ],
  point: [
    [-2, -2.4],
    [-4.4, -6],
    [-3.6, -9.4],
  ],
  resting: [
    [-2, -2.4],
    [-4.6, -5.4],
    [-5.6, -9],
  ],
  two_free: [
    [-2, -2.4],
    [-5, -5.2],
    [-7, -8.6],
  ],
}
export type Pose = keyof typeof POSES

const grown = (points: readonly Point[], k: number): Point[] => points.map(([x, y]) => [x * k, y * k])

/** The palm, which covers where the fingers begin. */
function palm(k: number): Limb[] {
  const ray = (x: number, y: number): Limb => [
    grown(
      [
        [x * 0.62, -1],
        [x, y],
      ],
      k,
    ),
    [1.7 * k, 1.25 * k],
  ]
  const middle: Limb = [
    grown(
      [
        [0, 0],
        [0, -5],
      ],
      k,
    ),
    [2.5 * k, 3.2 * k],
  ]
  return [ray(-2.6, -8), ray(-0.9, -8.4), ray(0.9, -8.2), ray(2.5, -7.2), middle]
}

export interface HandFromAbove {
  readonly wrist: Point
  /** Direction of the middle finger: 90 is up the page. */
  readonly to: number
  /** Size of one centimetre. */
  readonly scale: number
  readonly pose?: Pose
  /** The palm looks up: the thumb is on the other side, and no nails are seen. */
  readonly palmUp?: boolean
  /** A left hand: the client's other one. */
  readonly left?: boolean
}

export function handFromAbove(hand: HandFromAbove): Shape {
  const { wrist, to, scale: k, pose = 'flat', palmUp = false, left = false } = hand
  const fingers: Limb[] = [
    [grown(THUMBS[pose], k), [1.5 * k, 1.15 * k, 0.9 * k]],
    ...POSES[pose].map((joints): Limb => [grown(joints, k), [0.95 * k, 0.9 * k, 0.75 * k]]),
  ]
  const drawn = [
    joined(palm(k)),
    ...fingers.map(([joints, radii]) => limb(joints, radii)),
    cover(palm(k)),
    ...(palmUp ? fingers.filter(folded).map(([joints, radii]) => limb(joints, radii)) : nails(pose, k)),
  ].join('')
  const sided = palmUp !== left ? `<g transform="scale(-1 1)">${drawn}</g>` : drawn
  return moved(wrist, turned(90 - to, [0, 0], sided))
}

/** A finger bent back over the palm is seen from the palm side. */
const folded = ([joints]: Limb): boolean => (joints[2]?.[1] ?? 0) > (joints[1]?.[1] ?? 0)

/** Nails show that the back of the hand is seen; a small hand would only be blotted by them. */
function nails(pose: Pose, k: number): Shape[] {
  if (k < 5) return []
  return POSES[pose].map((joints) => {
    const [x, y] = joints[2]
    return ellipse([x * k, y * k], 0.42 * k, 0.55 * k, { line: 'thin' })
  })
}
