/** From the uncertainty of what goes into a value to that of the value. */
import { quantile, standardDeviation } from '../statistics/descriptive.ts'
import { randomFrom } from '../../random.ts'

/** One quantity that a value is worked out from; its errors are independent of those of the others. */
export interface Input {
  /** Standard uncertainty. */
  readonly u: number
  /** Inputs that belong to one reading, and which way each moves it: the check of straightness moves them together. */
  readonly reading: string
  readonly moves: 1 | -1
}

export interface Propagated {
  /** Expanded uncertainty: the value lies within this with about 95 %, as with a coverage factor of 2. */
  readonly half: number
  /** The law of propagation of uncertainty, or a simulation where the formula isn't straight enough for it. */
  readonly method: 'formula' | 'simulation'
}

/** A value worked out with each input off by an error; null where it has none then. */
export type Model = (errors: readonly number[]) => number | null

/** The coverage factor, and what it covers of a normal distribution. */
const COVERAGE = 2
const COVERED = 0.954499736103642

/** So far from straight, as a part of the expanded uncertainty, is straight enough. */
const STRAIGHT = 0.05

/**
 * Expanded uncertainty of `value`, which is `model(0, 0, …)`. By the law of propagation (JCGM 100:2008, 5.1.2, with the numerical
 * sensitivities of 5.1.3 note 2) where the model is straight over two standard uncertainties in every direction in which
 * readings can part or meet, so that the least, the largest or the middle one stays the same; else by simulation
 * (JCGM 101:2008, 7), adaptive as its 7.9, with its coverage counted about the value that is shown. Null where
 * the model too often has no value nearby.
 * @param seed the same seed gives the same uncertainty
 */
export function propagate(
  model: Model,
  value: number,
  inputs: readonly Input[],
  seed: number,
): Propagated | null {
  const effects = inputs.map((_, at) => effectOf(model, inputs, at))
  if (effects.every((effect): effect is number => effect !== null)) {
    const half = COVERAGE * Math.hypot(...effects)
    if (isStraight(model, inputs, effects, value, half)) return { half, method: 'formula' }
  }
  return simulate(model, inputs, value, randomFrom(seed))
}

/** What one standard uncertainty of an input does to the value; null where it has none then. */
function effectOf(model: Model, inputs: readonly Input[], at: number): number | null {
  const off = (sign: 1 | -1) => model(inputs.map(({ u }, each) => (each === at ? sign * u : 0)))
  const [up, down] = [off(1), off(-1)]
  return up === null || down === null ? null : (up - down) / 2
}

function isStraight(
  model: Model,
  inputs: readonly Input[],
  effects: readonly number[],
  value: number,
  half: number,
): boolean {
  const readings = [...new Set(inputs.map(({ reading }) => reading))]
  // All together, and one reading against all others, both ways.
  const sides = [null, ...(readings.length > 1 ? readings : [])].flatMap((apart) =>
    [1, -1].map((sign) => ({ apart, sign })),
  )
  return sides.every(({ apart, sign }) => {
    const steps = inputs.map(
      ({ reading, moves }) => (apart === null || reading === apart ? sign : -sign) * moves,
    )
    const found = model(inputs.map(({ u }, at) => COVERAGE * u * (steps[at] ?? 0)))
    const straight = effects.reduce((sum, effect, at) => sum + COVERAGE * effect * (steps[at] ?? 0), value)
    return found !== null && Math.abs(found - straight) <= STRAIGHT * half
  })
}

/** Draws a block, the fewest and the most blocks, and how well the blocks must agree. */
const BLOCK = 500
const FEWEST = 4
const MOST = 20
const SETTLED = 0.05

function simulate(
  model: Model,
  inputs: readonly Input[],
  value: number,
  random: () => number,
): Propagated | null {
  const far: number[] = []
  const halves: number[] = []
  for (let block = 0; block < MOST && !isSettled(halves); block++) {
    const here: number[] = []
    for (let draw = 0; draw < BLOCK; draw++) {
      const found = model(inputs.map(({ u }) => u * normalDeviate(random)))
      if (found !== null) here.push(Math.abs(found - value))
    }
    // A value that is lost in more than every tenth draw stands on an edge, and its error can't be told.
    if (here.length < 0.9 * BLOCK) return null
    halves.push(quantile(here, COVERED) ?? 0)
    far.push(...here)
  }
  return { half: quantile(far, COVERED) ?? 0, method: 'simulation' }
}

/** Twice the standard error of the mean of the blocks lies within a twentieth of it. */
function isSettled(halves: readonly number[]): boolean {
  if (halves.length < FEWEST) return false
  const mean = halves.reduce((sum, half) => sum + half, 0) / halves.length
  return (2 * (standardDeviation(halves) ?? 0)) / Math.sqrt(halves.length) <= SETTLED * mean
}

/** Box & Muller 1958, Ann Math Stat 29:610. */
const normalDeviate = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** A seed from a name: FNV-1a (Fowler, Noll & Vo). */
export function seedFrom(text: string): number {
  let hash = 0x811c9dc5
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193)
  return hash >>> 0
}
