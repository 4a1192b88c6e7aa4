/** What those who rate don't see: the values that another of them has given. */
import type { Protocol } from '../language/model.ts'
import { passesOf } from '../language/passes.ts'
import type { Place } from './events.ts'
import { spotOf, type Tree } from './tree.ts'
import type { Trial } from './view.ts'

const RATERS = 'raters'

/** Trials as whoever rates at a node may see them: without the values of the other raters. */
export function seenFrom(
  { protocol, tree }: { readonly protocol: Protocol; readonly tree: Tree },
  at: { readonly node: string; readonly place: Place },
  trials: readonly Trial[],
): Trial[] {
  if (protocol.raters?.unseen !== true || !tree.spots.has(at.node)) return [...trials]
  const loops = spotOf(tree, at.node).around.flatMap((section) => {
    const passes = passesOf(section, protocol.draws)
    return passes?.list === RATERS ? [passes.loop] : []
  })
  const isOthers = ({ place }: Trial): boolean =>
    Object.entries(place).some(([loop, pass]) => loops.includes(loop) && pass !== at.place[loop])
  return trials.map((trial) =>
    isOthers(trial) ? { ...trial, readings: {}, happenings: [], remark: '' } : trial,
  )
}
