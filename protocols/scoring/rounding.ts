/** Rounding, once and last: a tie goes away from zero, judged on the decimal that a number is shown as. */
import { fixed } from '../decimal.ts'

/** A value as it is shown: exactly `decimals` places, ties away from zero, so that 1.005 gives 1.01. */
export const shownValue = (value: number, decimals: number): string => fixed(value, decimals)

/** The number that is shown. */
export const round = (value: number, decimals: number): number => Number(fixed(value, decimals))
