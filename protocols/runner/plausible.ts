/** Values that can hardly be: asked for again, and marked where they were confirmed all the same. */
import { refuse } from './refuse.ts'
import type { Refusal } from './view.ts'

/** The lowest and the highest value that nobody confirms again. */
export type Range = readonly [lowest: number, highest: number]

export const isWithin = (value: number, [lowest, highest]: Range): boolean =>
  value >= lowest && value <= highest

/** Why a value that was typed has to be confirmed before it is taken. */
export function notPlausible(value: number, range: Range, confirmed: boolean): Refusal | null {
  if (confirmed || isWithin(value, range)) return null
  return refuse('out_of_range', { value, lowest: range[0], highest: range[1] })
}
