import type { Place } from './events.ts'

/** True when two places name the same passes of the same loops. */
export function samePlace(a: Place, b: Place): boolean {
  if (a === b) return true
  let loops = 0
  for (const loop in a) {
    if (a[loop] !== b[loop]) return false
    loops += 1
  }
  return loops === Object.keys(b).length
}

/** True when every pass that `part` names is one of `whole`. */
export const isPartOf = (part: Place, whole: Place): boolean =>
  Object.entries(part).every(([loop, pass]) => whole[loop] === pass)
