/**
 * Exact arithmetic on decimal numbers. A double stands for the shortest decimal that reads back as it, the one
 * that a person sees: 1.005 is one thousand and five thousandths here, though the double lies a little below.
 */

/** A fraction of whole numbers; `den` is above zero. */
export interface Rational {
  readonly num: bigint
  readonly den: bigint
}

const digits = (x: bigint): number => (x < 0n ? -x : x).toString().length

/** The decimal that `x` is shown as, exactly. `x` must be finite. */
export function rational(x: number): Rational {
  const [mantissa = '0', exponent = '0'] = x.toString().split('e')
  const [whole = '0', fraction = ''] = mantissa.split('.')
  const power = Number(exponent) - fraction.length
  const num = BigInt(whole + fraction)
  return power >= 0 ? { num: num * 10n ** BigInt(power), den: 1n } : { num, den: 10n ** BigInt(-power) }
}

const times = (a: Rational, b: Rational): Rational => ({ num: a.num * b.num, den: a.den * b.den })

/** `a / b`; `b` must not be zero. */
export const dividedBy = (a: Rational, b: Rational): Rational =>
  b.num < 0n ? { num: -a.num * b.den, den: -a.den * b.num } : { num: a.num * b.den, den: a.den * b.num }

export const isOne = (a: Rational): boolean => a.num === a.den

/** The double nearest to a fraction (to within the rounding of its first 40 digits). */
export function toNumber({ num, den }: Rational): number {
  const shift = Math.max(0, 40 - digits(num) + digits(den))
  return Number(`${(num * 10n ** BigInt(shift)) / den}e-${shift}`)
}

/** `x` times an exact factor, rounded once. */
export const scaled = (x: number, by: Rational): number =>
  Number.isFinite(x) ? toNumber(times(rational(x), by)) : x

/**
 * `x` to `decimals` places as text with exactly that many places; a tie goes away from zero, judged on the
 * decimal that `x` is shown as, so that 1.005 gives 1.01. A rounded zero has no sign. `x` must be finite.
 */
export function fixed(x: number, decimals: number): string {
  const { num, den } = rational(x)
  const size = (num < 0n ? -num : num) * 10n ** BigInt(decimals)
  const rounded = (2n * size + den) / (2n * den)
  const text = rounded.toString().padStart(decimals + 1, '0')
  const cut = text.length - decimals
  const shown = decimals === 0 ? text : `${text.slice(0, cut)}.${text.slice(cut)}`
  return num < 0n && rounded !== 0n ? `-${shown}` : shown
}
