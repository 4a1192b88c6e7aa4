/** Sums and means of decimals, rounded once at the end and the same in any order of the numbers. */
import { dividedBy, type Rational, rational, toNumber } from '../../decimal.ts'

const plus = (a: Rational, b: Rational): Rational =>
  a.den === b.den
    ? { num: a.num + b.num, den: a.den }
    : a.den % b.den === 0n
      ? { num: a.num + b.num * (a.den / b.den), den: a.den }
      : { num: a.num * b.den + b.num * a.den, den: a.den * b.den }

const total = (xs: readonly number[]): Rational => xs.map(rational).reduce(plus, { num: 0n, den: 1n })

/** Sum; an unlimited number makes it unlimited. */
export const sumOf = (xs: readonly number[]): number =>
  xs.includes(Number.POSITIVE_INFINITY) ? Number.POSITIVE_INFINITY : toNumber(total(xs))

/** Arithmetic mean of at least one number; an unlimited number makes it unlimited. */
export const meanOf = (xs: readonly number[]): number =>
  xs.includes(Number.POSITIVE_INFINITY)
    ? Number.POSITIVE_INFINITY
    : toNumber(dividedBy(total(xs), { num: BigInt(xs.length), den: 1n }))

/** `a - b`, as decimals. */
export const difference = (a: number, b: number): number => sumOf([a, -b])

export const ascending = (xs: readonly number[]): number[] => [...xs].sort((a, b) => a - b)

/** The middle of at least one number, or the mean of the two in the middle. */
export function medianOf(xs: readonly number[]): number {
  const sorted = ascending(xs)
  const half = Math.floor(sorted.length / 2)
  return meanOf(sorted.slice(sorted.length % 2 === 0 ? half - 1 : half, half + 1))
}
