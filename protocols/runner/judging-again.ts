/** What rules and sections would say by now of what they judged then: corrections never re-route by themselves. */
import { type Ground, sectionKind, sectionMoment } from './due.ts'
import { listOf } from './grown.ts'
import { samePlace } from './places.ts'
import type { Judged, State } from './state.ts'
import { spotOf } from './tree.ts'

/** Rules and sections that would have judged otherwise on what is known now, each as it stood when it was judged. */
export function differing(ground: Ground, state: State): State['wouldDiffer'] {
  const found: Judged[] = []
  for (const judged of listOf(state.judged)) {
    if (judgedAgain(ground, state, judged) === judged.verdict) continue
    if (!found.some(({ rule, place }) => rule === judged.rule && samePlace(place, judged.place))) {
      found.push(judged)
    }
  }
  return found.map(({ rule, place }) => ({ rule, place }))
}

/** What would be said by now, of the trials that there were then. */
export function judgedAgain(ground: Ground, state: State, judged: Judged): Judged['verdict'] {
  const { rule, place, verdict, trials } = judged
  const then: State = { ...state, trials: { items: state.trials.items.slice(0, trials), length: trials } }
  const { node } = spotOf(ground.tree, rule)
  if (node.node === 'rule') return ground.judging.holds(then, node.when, place)
  if (node.node !== 'section') return verdict
  const { chart, chooses } = sectionKind(node)
  const moment = sectionMoment(ground, then, node, place)
  return chart === null ? (chooses?.(moment).part ?? null) : chart.next(moment)
}
