/** Outcomes of steps that a file can tell apart: what walks of all paths try. */
import type { Stamp } from '../runner/events.ts'
import type { RehearsedEvent } from './kind.ts'

/** Milliseconds between two presses: the key is dead for a second after a stop. */
const BETWEEN = 2000

export const press = (event: string, after = BETWEEN): RehearsedEvent => ({
  event,
  after,
  data: (stamp) => ({ stamp }),
})

/** An event of the clock outside, so many milliseconds later. */
export const clockEvent = (event: string, after: number): RehearsedEvent => ({
  event,
  after,
  data: ({ at, clock }: Stamp) => ({ at, clock }),
})

/**
 * The usual number first, then those at, below and above each one that it is compared with, as far as they lie in the
 * range; `step` is the least that tells two apart.
 */
export function numbersAround(
  usual: number,
  compared: readonly number[],
  { step, range: [lowest, highest] }: { readonly step: number; readonly range: readonly [number, number] },
): readonly number[] {
  const digits = Math.max(0, Math.ceil(-Math.log10(step)))
  const near = compared.flatMap((n) => [n - step, n, n + step]).map((n) => Number(n.toFixed(digits + 1)))
  return [...new Set([usual, ...near])].filter((n) => n >= lowest && n <= highest)
}
