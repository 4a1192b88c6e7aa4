/** What those who rate don't see: the values that another of them has given. */
import type { Protocol } from '../language/model.ts'
import type { Place } from './events.ts'
import { isPending, raterOf, ratersAround } from './raters.ts'
import type { Tree } from './tree.ts'
import type { Trial } from './view.ts'

interface Ground {
  readonly protocol: Protocol
  readonly tree: Tree
}

/** Trials as whoever is at a node may see them: without the values of raters that are not to be seen there yet. */
export function seenFrom(
  { protocol, tree }: Ground,
  at: { readonly node: string; readonly place: Place },
  trials: readonly Trial[],
): Trial[] {
  if (protocol.raters?.unseen !== true) return [...trials]
  const loops = tree.spots.has(at.node) ? ratersAround(tree, at.node) : []
  const isOthers = ({ place }: Trial): boolean =>
    Object.entries(place).some(([loop, pass]) => loops.includes(loop) && pass !== at.place[loop])
  const isAnybodys = (trial: Trial): boolean => raterOf(tree, trial) !== null
  const isHidden = loops.length === 0 && trials.some(isPending) ? isAnybodys : isOthers
  return trials.map((trial) =>
    isHidden(trial) ? { ...trial, readings: {}, happenings: [], remark: '' } : trial,
  )
}

/**
 * Trials as a result may rest on them: while a rater's grades are still to come and nobody is to see what another has
 * given, nobody's are there yet.
 */
export function openIn({ protocol, tree }: Ground, trials: readonly Trial[]): readonly Trial[] {
  if (protocol.raters?.unseen !== true || !trials.some(isPending)) return trials
  return trials.map((trial) =>
    trial.status === 'standing' && raterOf(tree, trial) !== null
      ? { ...trial, outcome: 'pending', readings: {}, happenings: [], remark: '' }
      : trial,
  )
}
