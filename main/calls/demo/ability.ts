/** How the demo's invented clients do at a trial: an affected hand recovers over its visits, the other one is steady. */
import { type ClientFacts, SIDES } from '../../../protocols/client.ts'
import type { Simulation } from '../../../protocols/rehearsal/simulate.ts'
import { BLOCKS, GRIP, PEGS } from './people.ts'

/** What the simulated client draws with a hand at its worst, and with one that nothing is wrong with. */
const DRAWS: Readonly<Record<string, { readonly worst: number; readonly well: number }>> = {
  // Seconds of a run and the gaps between blocks: high is slow.
  [PEGS]: { worst: 0.92, well: 0.3 },
  [BLOCKS]: { worst: 0.95, well: 0.35 },
  // Kilograms: high is strong.
  [GRIP]: { worst: 0.04, well: 0.42 },
}

/** Trials of one hand lie about so far apart by chance. */
const SCATTER = 0.08
/** A hand that is the less affected of two is this far on the way from worst to well. */
const LESS_AFFECTED = 0.8

type Does = NonNullable<Simulation['does']>

/**
 * @param recovered from 0, as an affected hand was at its worst, to 1, as one that isn't affected does
 */
export const abilityOf =
  (test: string, { arms }: ClientFacts, recovered: number): Does =>
  ({ state, place }, drawn) => {
    const draws = DRAWS[test]
    const side = SIDES.find((one) => Object.values(place).includes(one))
    // A value that is read is drawn while the step waits; for all others that only says how soon it begins.
    const isTried = state === 'running' || state === 'waiting'
    if (draws === undefined || side === undefined || !isTried) return drawn
    const { status } = arms[side]
    const share = status === 'affected' ? recovered : status === 'less_affected' ? LESS_AFFECTED : 1
    const about = draws.worst + (draws.well - draws.worst) * share
    return Math.min(0.99, Math.max(0, about + (drawn - 0.5) * SCATTER))
  }
