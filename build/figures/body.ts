/**
 * People: limbs of a length and a thickness in centimetres, joined at joints. Proportions are those of an
 * adult of about 170 cm; nothing in a figure is measured off a person.
 */
import { away, circle, ellipse, line, n, path, type Point, type Shape } from './pen.ts'

/** A limb's outline: circles at the joints and what spans between them, wound one way so that they unite. */
function limbPath(joints: readonly Point[], radii: readonly number[]): string {
  const round = joints.map(([x, y], index) => {
    const r = radii[index] ?? 0
    return `M${n(x - r)} ${n(y)}a${n(r)} ${n(r)} 0 0 1 ${n(2 * r)} 0a${n(r)} ${n(r)} 0 0 1 ${n(-2 * r)} 0Z`
  })
  const spans = joints.slice(1).map((to, index) => {
    const from = joints[index] ?? to
    const [r, s] = [radii[index] ?? 0, radii[index + 1] ?? 0]
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
    const corner = ([x, y]: Point, off: number) => `${n(x + dy * off)} ${n(y - dx * off)}`
    return `M${corner(from, r)}L${corner(to, s)}L${corner(to, -s)}L${corner(from, -r)}Z`
  })
  return [...round, ...spans].join('')
}

/** Joints in order and how thick it is at each. */
export type Limb = readonly [joints: readonly Point[], radii: readonly number[]]
const pathOf = (limbs: readonly Limb[]): string =>
  limbs.map(([joints, radii]) => limbPath(joints, radii)).join('')

/** What hides the seams of limbs that were drawn one by one. */
export const cover = (limbs: readonly Limb[]): Shape =>
  `<path d="${pathOf(limbs)}" fill="#fff" stroke="none"/>`
/** Limbs that grow together: one outline around all of them, nothing where they meet. */
export const joined = (limbs: readonly Limb[]): Shape =>
  `<path d="${pathOf(limbs)}" fill="#fff" stroke-width="5"/>${cover(limbs)}`
export const limb = (joints: readonly Point[], radii: readonly number[]): Shape => joined([[joints, radii]])

/** Where the elbow is between shoulder and wrist, bowed out to one side by so much. */
function elbowOf(shoulder: Point, wrist: Point, bow: number): Point {
  const [dx, dy] = [wrist[0] - shoulder[0], wrist[1] - shoulder[1]]
  const long = Math.hypot(dx, dy) || 1
  return [(shoulder[0] + wrist[0]) / 2 - (dy / long) * bow, (shoulder[1] + wrist[1]) / 2 + (dx / long) * bow]
}

/** Shoulders and head seen from above; the client looks up the page. Drawn after the arms, which come out beneath. */
export function fromAbove([x, y]: Point, scale: number): Shape {
  const s = scale
  return (
    limbBetween([x - 15 * s, y + 1 * s], [x + 15 * s, y + 1 * s], 6.5 * s) +
    ellipse([x, y - 1.5 * s], 7.2 * s, 9 * s, { fill: 'paper' }) +
    path(
      `M${n(x - 2 * s)} ${n(y - 10.3 * s)}L${n(x)} ${n(y - 12.4 * s)}L${n(x + 2 * s)} ${n(y - 10.3 * s)}`,
      { fill: 'paper' },
    )
  )
}
const limbBetween = (from: Point, to: Point, r: number): Shape => limb([from, to], [r, r])

/** The arm from above, its hand not drawn. `side` is 1 for the right arm, -1 for the left. */
export function armFromAbove(middle: Point, scale: number, side: 1 | -1, wrist: Point, bow = 6): Shape {
  const shoulder: Point = [middle[0] + side * 17 * scale, middle[1] + scale]
  const elbow = elbowOf(shoulder, wrist, side * bow * scale)
  return limb([shoulder, elbow, wrist], [5.5 * scale, 4.4 * scale, 2.9 * scale])
}

export interface Seated {
  /** The hip joint. */
  readonly hip: Point
  readonly scale: number
  /** Upper arm and forearm of the near arm; 0 is ahead, -90 hanging down, 90 up. */
  readonly upperArm: number
  readonly forearm: number
  /** Direction of the hand; the forearm's where it isn't said. */
  readonly hand?: number
  /** A hand drawn by somebody else. */
  readonly withoutHand?: boolean
  readonly withoutLegs?: boolean
  /** Leaning of the trunk; 90 is upright. */
  readonly trunk?: number
}

const UPPER_ARM = 29
const FOREARM = 25
const TRUNK = 48

/** Where the joints of a seated person are, for what is drawn beside them. */
export function jointsOf({ hip, scale, upperArm, forearm, hand = forearm, trunk = 90 }: Seated) {
  const shoulder = away(hip, TRUNK * scale, trunk)
  const elbow = away(shoulder, UPPER_ARM * scale, upperArm)
  const wrist = away(elbow, FOREARM * scale, forearm)
  const head = away(shoulder, 22 * scale, trunk - 6)
  return { shoulder, elbow, wrist, fingertip: away(wrist, 17 * scale, hand), head }
}

/** Somebody seated, seen from the right side and looking to the right: the near arm is the right one. */
export function seated(person: Seated): Shape {
  const { hip, scale: s, hand = person.forearm } = person
  const { shoulder, elbow, wrist, head } = jointsOf(person)
  const knee = away(hip, 43 * s, -2)
  const ankle = away(knee, 41 * s, -90)
  const legs = person.withoutLegs
    ? ''
    : joined([
        [
          [hip, knee, ankle],
          [8.5 * s, 6.5 * s, 4 * s],
        ],
        [
          [
            [ankle[0], ankle[1] + 1.5 * s],
            [ankle[0] + 17 * s, ankle[1] + 3 * s],
          ],
          [3.6 * s, 2.2 * s],
        ],
      ])
  const trunk = limb([hip, shoulder], [10.5 * s, 9.5 * s])
  return (
    headFromSide(head, s) +
    trunk +
    legs +
    armFromSide(shoulder, elbow, wrist, s, person.withoutHand ? null : hand)
  )
}

export function headFromSide([x, y]: Point, s: number, looksTo: 1 | -1 = 1): Shape {
  return (
    limb(
      [
        [x - looksTo * 2 * s, y + 4 * s],
        [x - looksTo * 3 * s, y + 15 * s],
      ],
      [5 * s, 5.5 * s],
    ) +
    circle([x, y], 10 * s, { fill: 'paper' }) +
    path(
      `M${n(x + looksTo * 9.6 * s)} ${n(y - 2.4 * s)}L${n(x + looksTo * 12.6 * s)} ${n(y + 2 * s)}L${n(x + looksTo * 9.6 * s)} ${n(y + 3 * s)}`,
      { fill: 'paper' },
    )
  )
}

/** An arm from the side; the hand as a mitten in its direction, or none. */
export function armFromSide(
  shoulder: Point,
  elbow: Point,
  wrist: Point,
  s: number,
  hand: number | null,
): Shape {
  const arm: Limb = [
    [shoulder, elbow, wrist],
    [5.4 * s, 4.4 * s, 3 * s],
  ]
  if (hand === null) return joined([arm])
  return joined([
    arm,
    [
      [wrist, away(wrist, 8 * s, hand), away(wrist, 16 * s, hand)],
      [3 * s, 3.8 * s, 2 * s],
    ],
  ])
}

/** A chair from the side, its seat beneath the hip; the back stands behind the trunk. */
export function chair(hip: Point, s: number): Shape {
  const [x, y] = [hip[0], hip[1] + 9.5 * s]
  return (
    line([
      [x - 14 * s, y - 46 * s],
      [x - 14 * s, y + 38 * s],
    ]) +
    line([
      [x - 14 * s, y],
      [x + 30 * s, y],
      [x + 30 * s, y + 38 * s],
    ])
  )
}

/** The floor beneath somebody seated. */
export const floorUnder = (hip: Point, s: number): number => hip[1] + 47.5 * s

/** The examiner across the table, looking back to the client; the hand ends at `fingertip`. */
export function examinerAcross(x: number, floor: number, fingertip: Point, s = 1.9): Shape {
  const shoulder: Point = [x - 4, floor - 142]
  const wrist = away(fingertip, 17 * s, 24)
  return (
    limb(
      [
        [x, floor - 58],
        [x - 2, floor - 140],
      ],
      [20, 18],
    ) +
    headFromSide([x - 6, floor - 188], s, -1) +
    armFromSide(shoulder, elbowOf(shoulder, wrist, -14), wrist, s, 204)
  )
}
