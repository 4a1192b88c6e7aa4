import type { SectionMoment } from './chart-parts.ts'
import { orderingOf } from './chart-sections.ts'
import { type Ground, sectionMoment } from './due.ts'
import { innermost, phaseOf } from './refusals.ts'
import type { Snapshot } from './state.ts'
import { stateOf } from './tree.ts'

/** The section that waits for its order now; null where none does. */
export function orderingMoment(ground: Ground, snapshot: Snapshot): SectionMoment | null {
  const { at, place } = snapshot.context
  const { node } = ground.tree.spots.get(at) ?? {}
  if (node?.node !== 'section' || phaseOf(snapshot) !== 'giving') return null
  if (stateOf(at, innermost(snapshot)) !== orderingOf(at)) return null
  return sectionMoment(ground, snapshot.context, node, place)
}
