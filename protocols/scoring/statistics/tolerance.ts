/** Intervals that hold a share of a normal population with a stated confidence, from a sample's mean and SD. */
import { chiSquareUpper } from './chi-square.ts'
import { normalCdf, normalQuantile, normalUpper } from './normal.ts'
import { rootOf } from './root.ts'
import { noncentralTQuantile } from './student-t.ts'
import { because, type Undefined } from './undefined.ts'

const isShare = (p: number): boolean => p > 0 && p < 1

function faultIn(n: number, share: number, confidence: number): Undefined | null {
  if (![n, share, confidence].every(Number.isFinite)) return because('not_finite')
  if (n < 2) return because('too_few')
  return isShare(share) && isShare(confidence) ? null : because('out_of_range')
}

/**
 * k such that, with that confidence, at least the share lies below mean + k SD (or above mean - k SD): noncentral t
 * with n - 1 degrees of freedom and noncentrality z sqrt(n), over sqrt(n) (Owen 1968, Technometrics 10:445).
 */
export function oneSidedFactor(n: number, share: number, confidence: number): number | Undefined {
  const fault = faultIn(n, share, confidence)
  if (fault !== null) return fault
  const root = Math.sqrt(n)
  const t = noncentralTQuantile(confidence, n - 1, (normalQuantile(share) ?? 0) * root)
  return t === null ? because('out_of_range') : t / root
}

/** The weight of a normal mean is nothing beyond so many standard errors, and as exact as doubles at this step. */
const FAR = 9
const STEP = 1 / 16

/**
 * k such that, with that confidence, at least the share lies within mean ∓ k SD: exact, as the mean over where the
 * sample's mean may lie of the chance that its SD is large enough (Odeh 1978, Commun Stat B 7:183). The trapezoidal
 * rule is as exact as doubles are for so smooth a weight.
 */
export function twoSidedFactor(n: number, share: number, confidence: number): number | Undefined {
  const fault = faultIn(n, share, confidence)
  if (fault !== null) return fault
  const df = n - 1
  const nodes = Array.from({ length: FAR / STEP + 1 }, (_, i) => i * STEP).map((z) => ({
    weight: (z === 0 ? 1 : 2) * Math.exp((-z * z) / 2),
    reach: reachAround(z / Math.sqrt(n), share),
  }))
  const all = nodes.reduce((total, { weight }) => total + weight, 0)
  const held = (k: number): number =>
    nodes.reduce((total, { weight, reach }) => {
      const chance = chiSquareUpper((df * reach ** 2) / k ** 2, df) ?? 0
      return total + (weight / all) * chance
    }, 0)
  const root = rootOf((logK) => held(Math.exp(logK)) - confidence, 0, 1)
  return root === null ? because('out_of_range') : Math.exp(root)
}

/** The r for which a share of the standard normal lies within `centre` ∓ r. */
function reachAround(centre: number, share: number): number {
  const miss = (r: number): number => 1 - share - normalUpper(centre + r) - normalCdf(centre - r)
  const wide = -(normalQuantile((1 - share) / 2) ?? 0)
  return rootOf((r) => miss(Math.abs(r)), wide, wide + centre) ?? wide
}
