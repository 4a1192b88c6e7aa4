/** Hands from the side, by what they do: right hands that point left, drawn by joints and thickness. */
import { cover, joined, type Limb, limb } from './body.ts'
import { curve, moved, type Point, type Shape } from './pen.ts'

const grown = (joints: readonly Point[], k: number): Point[] => joints.map(([x, y]) => [x * k, y * k])

/** Points as SVG writes them. */
function points(written: string): Point[] {
  return written.split(' ').map((pair): Point => {
    const [x = 0, y = 0] = pair.split(',').map(Number)
    return [x, y]
  })
}

/** Each limb with an outline of its own, one after the other. */
const drawnAlone = (limbs: readonly Limb[], k: number): Shape =>
  sized(limbs, k)
    .map(([joints, radii]) => limb(joints, radii))
    .join('')

/** Limbs as they are at another size. */
const sized = (limbs: readonly Limb[], k: number): Limb[] =>
  limbs.map(([joints, radii]) => [grown(joints, k), radii.map((r) => r * k)])

const DIGIT = [19, 17, 15, 11]
/** The hand that pinches, at its own size: the fingers that don't help, what they grow out of, and its seam. */
const PINCH: Readonly<Record<'bent' | 'back' | 'seam', readonly Limb[]>> = {
  bent: [
    [points('150,-30 104,-16 122,14'), [17, 15, 13]],
    [points('160,-6 120,12 140,34'), [16, 14, 12]],
  ],
  back: [[points('330,28 250,18 180,-12'), [36, 44, 54]]],
  seam: [[points('250,18 186,-10'), [40, 50]]],
}

/**
 * A hand from its thumb side, pointing left, index finger above and thumb below; what it holds is at 0 0.
 * `gap` is how thick that is, in the units of the drawing at scale 1. `fingers` 2: the middle finger lies
 * beside the index finger on the thing; 1: it is bent into the palm with the others.
 */
export function pinching(at: Point, k: number, gap = 8, fingers: 1 | 2 = 1): Shape {
  const half = gap / 2
  const digit = (joints: readonly Point[]): Shape => drawnAlone([[joints, DIGIT]], k)
  const index: Point[] = [
    [150, -62],
    [78, -78 - half / 2],
    [26, -46 - half],
    [6, -14 - half],
  ]
  const beside: Point[] = [
    [156, -50],
    [92, -96 - half / 2],
    [28, -66 - half],
    [-6, -16 - half],
  ]
  const thumb: Point[] = [
    [176, 44],
    [98, 58 + half / 2],
    [44, 36 + half],
    [6, 13 + half],
  ]
  return moved(
    at,
    ...(fingers === 2 ? [digit(beside)] : []),
    drawnAlone(PINCH.bent, k),
    joined(sized(PINCH.back, k)),
    digit(thumb),
    digit(index),
    cover(sized(PINCH.seam, k)),
    curve(grown(points('196,40 176,16 172,-4'), k), { line: 'thin' }),
  )
}

/** A closed hand from the palm side, pointing left, thumb above; the thumb's pad is at 0 0 and presses down. */
export function keyPinching(at: Point, scale: number): Shape {
  const k = scale
  const finger = (y: number, from: number): Shape =>
    limb(
      grown(
        [
          [128, y],
          [from, y],
          [from + 8, y + 4],
          [96, y + 4],
        ],
        k,
      ),
      [15 * k, 15 * k, 13 * k, 12 * k],
    )
  return moved(
    at,
    joined([
      [
        grown(
          [
            [330, 62],
            [240, 52],
            [150, 52],
          ],
          k,
        ),
        [36 * k, 46 * k, 56 * k],
      ],
    ]),
    finger(112, 22),
    finger(84, 8),
    finger(56, -2),
    finger(26, -10),
    limb(
      grown(
        [
          [196, 0],
          [120, -34],
          [52, -26],
          [4, -12],
        ],
        k,
      ),
      [20 * k, 19 * k, 16 * k, 12 * k],
    ),
    cover([
      [
        grown(
          [
            [250, 52],
            [190, 30],
          ],
          k,
        ),
        [40 * k, 40 * k],
      ],
    ]),
  )
}

/** A fist about an upright handle, pointing left, thumb above; the middle of the handle is at 0 0. */
export function gripping(at: Point, scale: number): Shape {
  const k = scale
  const finger = (y: number, from: number): Shape =>
    limb(
      grown(
        [
          [60, y],
          [from, y - 2],
          [from + 4, y + 2],
          [18, y + 2],
        ],
        k,
      ),
      [14 * k, 14 * k, 13 * k, 12 * k],
    )
  return moved(
    at,
    joined([
      [
        grown(
          [
            [250, 10],
            [150, 6],
            [66, 0],
          ],
          k,
        ),
        [36 * k, 44 * k, 54 * k],
      ],
    ]),
    finger(42, -22),
    finger(15, -28),
    finger(-13, -30),
    finger(-41, -26),
    limb(
      grown(
        [
          [104, -50],
          [52, -76],
          [2, -72],
        ],
        k,
      ),
      [20 * k, 17 * k, 13 * k],
    ),
    cover([
      [
        grown(
          [
            [150, 6],
            [84, -6],
          ],
          k,
        ),
        [40 * k, 47 * k],
      ],
    ]),
  )
}

/** The hand that lies flat, at its own size. */
const FLAT: Readonly<Record<'others' | 'hand' | 'thumb' | 'seam', readonly Limb[]>> = {
  others: [[points('124,-22 70,-15 22,-11'), [15, 13, 11]]],
  hand: [
    [points('340,-40 230,-36 130,-27'), [35, 31, 25]],
    [points('230,-28 150,-17'), [26, 17]],
  ],
  thumb: [[points('220,-24 150,-15 104,-13'), [17, 15, 12]]],
  seam: [
    [points('230,-36 140,-30'), [30, 20]],
    [points('250,-30 214,-22'), [22, 14]],
  ],
}

/**
 * A hand flat on what it lies on, from its thumb side, pointing left; the fingertips' underside is at 0 0.
 * The index finger is `lifted` from its knuckle.
 */
export function lying(at: Point, k: number, lifted = 0): Shape {
  const index: Point[] = [
    [124, -34],
    [66, -30 - lifted * 0.55],
    [10, -11 - lifted],
  ]
  return moved(
    at,
    drawnAlone(FLAT.others, k),
    joined(sized(FLAT.hand, k)),
    drawnAlone([[index, [17, 14, 11]]], k),
    drawnAlone(FLAT.thumb, k),
    cover(sized(FLAT.seam, k)),
  )
}

/** An open hand from its thumb side, palm up, pointing left; the middle of the palm is at 0 0. */
export function openPalm(at: Point, scale: number): Shape {
  const k = scale
  return moved(
    at,
    joined([
      [
        grown(
          [
            [210, 22],
            [110, 18],
            [10, 20],
          ],
          k,
        ),
        [30 * k, 27 * k, 24 * k],
      ],
      [
        grown(
          [
            [10, 20],
            [-50, 16],
            [-106, 0],
          ],
          k,
        ),
        [20 * k, 15 * k, 11 * k],
      ],
    ]),
    limb(
      grown(
        [
          [84, 10],
          [40, -8],
          [-4, -6],
        ],
        k,
      ),
      [16 * k, 14 * k, 11 * k],
    ),
    cover([
      [
        grown(
          [
            [110, 18],
            [80, 16],
          ],
          k,
        ),
        [22 * k, 18 * k],
      ],
    ]),
  )
}
