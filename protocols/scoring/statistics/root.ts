/** Finding where a monotone function meets zero. */

/** Bounds are widened so often before it is said that there is no root. */
const WIDENINGS = 200
const STEPS = 200

/**
 * The x at which a continuous monotone function is zero, to the last digits of a double; null where widening
 * [from, to] meets no change of sign. Chandrupatla 1997, Adv Eng Softw 28:145: inverse quadratic steps where they
 * are safe, else halving.
 */
export function rootOf(f: (x: number) => number, from: number, to: number): number | null {
  const ends = bracket(f, from, to)
  return ends === null ? null : within(f, ends)
}

interface Ends {
  readonly a: number
  readonly fa: number
  readonly b: number
  readonly fb: number
}

function bracket(f: (x: number) => number, from: number, to: number): Ends | null {
  let [a, b] = [from, to]
  let [fa, fb] = [f(a), f(b)]
  let width = b - a
  for (let step = 0; step < WIDENINGS; step++) {
    if (Number.isNaN(fa) || Number.isNaN(fb)) return null
    if (fa === 0 || fb === 0 || fa < 0 !== fb < 0) return { a, fa, b, fb }
    width *= 1.6
    if (Math.abs(fa) < Math.abs(fb)) fa = f((a -= width))
    else fb = f((b += width))
  }
  return null
}

function within(f: (x: number) => number, ends: Ends): number {
  let { a: b, fa: fb, b: a, fb: fa } = ends
  let [c, fc] = [b, fb]
  let t = 0.5
  for (let step = 0; step < STEPS; step++) {
    const x = a + t * (b - a)
    const fx = f(x)
    if (fx < 0 === fa < 0) [c, fc] = [a, fa]
    else [c, fc, b, fb] = [b, fb, a, fa]
    ;[a, fa] = [x, fx]
    const [best, fBest] = Math.abs(fa) < Math.abs(fb) ? [a, fa] : [b, fb]
    const least = 2 * Number.EPSILON * Math.abs(best) + Number.MIN_VALUE
    const share = least / Math.abs(b - c)
    if (fBest === 0 || !(share <= 0.5)) return best
    t = Math.min(1 - share, Math.max(share, nextShare({ a, fa, b, fb }, c, fc)))
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b
}

/** How far from a towards b the next look is taken. */
function nextShare({ a, fa, b, fb }: Ends, c: number, fc: number): number {
  const xi = (a - b) / (c - b)
  const phi = (fa - fb) / (fc - fb)
  const isSafe = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
  if (!isSafe) return 0.5
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
}
