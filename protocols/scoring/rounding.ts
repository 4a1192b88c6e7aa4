/** Rounding, once and last: a tie goes away from zero, judged on the decimal that a number is shown as. */
import { fixed } from '../decimal.ts'

/** A value as it is shown: exactly `decimals` places, ties away from zero, so that 1.005 gives 1.01. */
export const shownValue = (value: number, decimals: number): string => fixed(value, decimals)

/** The number that is shown. */
export const round = (value: number, decimals: number): number => Number(fixed(value, decimals))

/**
 * Decimals for a figure of a table: those of the score, and up to two more where the figure is written with them. A
 * cut-off of 37.08 shown as 37.1 would put 37.09 on the wrong side for who reads it.
 */
export function placesOf(figure: number, decimals: number): number {
  const needed = [decimals, decimals + 1, decimals + 2].find((places) => round(figure, places) === figure)
  return needed ?? decimals
}

/**
 * A value with its expanded uncertainty, both to one place (JCGM 100:2008, 7.2.6): the uncertainty has two significant
 * digits at most, rounded up unless nothing is lost, and one at least; the value never more than `decimals` places.
 */
export function shownWith(
  value: number,
  half: number,
  decimals: number,
): { readonly value: string; readonly half: string } {
  const first = -Math.floor(Math.log10(half))
  const shared = Math.max(0, Math.min(decimals, first + 1))
  const halfPlaces = Math.max(0, first, shared)
  return { value: fixed(value, shared), half: fixed(roundedUp(half, halfPlaces), halfPlaces) }
}

/** Rounding down may take off so much of an uncertainty: 28.05 is shown as 28, 10.47 as 11 (7.2.6 has both). */
const NOTHING_LOST = 0.01

function roundedUp(value: number, places: number): number {
  const whole = 10 ** places
  const nearest = Math.round(value * whole) / whole
  return nearest >= value * (1 - NOTHING_LOST) ? nearest : Math.ceil(value * whole) / whole
}
