/** Those who rate, and the grades of one of them that are still to come. */
import type { Outcome, Section, Step } from '../language/model.ts'
import { type Grown, listOf, newest } from './grown.ts'
import { isPartOf } from './places.ts'
import type { Place } from './events.ts'
import { spotOf, stepOf, type Tree } from './tree.ts'
import type { Trial } from './view.ts'

const RATERS = 'raters'

export const isOverRaters = ({ fields }: Section): boolean => fields.in === RATERS

/** Names of the sections around a node that go through those who rate. */
export const ratersAround = (tree: Tree, name: string): readonly string[] =>
  spotOf(tree, name)
    .around.filter(isOverRaters)
    .map((section) => section.name)

/** The rater whose trial it is, by id; null for trials outside of such a section. */
export function raterOf(tree: Tree, { step, place }: Pick<Trial, 'step' | 'place'>): string | null {
  const [loop] = ratersAround(tree, step)
  const rater = loop === undefined ? undefined : place[loop]
  return rater === undefined ? null : String(rater)
}

export const isPending = ({ status, outcome }: Trial): boolean =>
  status === 'standing' && outcome === 'pending'

/** Trials whose grades are still to come: of one rater, or of anybody. */
export const pendingOf = (tree: Tree, trials: Grown<Trial>, rater: string | null): readonly Trial[] =>
  listOf(trials).filter((trial) => isPending(trial) && (rater === null || raterOf(tree, trial) === rater))

/**
 * The outcome of the trial that a further reading would have been of, where there is nothing to be read: a trial that
 * was refused can't be rated another day. Null where it can.
 */
export function unratable(
  tree: Tree,
  trials: Grown<Trial>,
  { step, place }: { readonly step: Step; readonly place: Place },
): Outcome | null {
  let first = step
  while (first.of !== null) first = stepOf(tree, first.of)
  if (first === step) return null
  const read = newest(
    trials,
    (trial) => trial.status === 'standing' && trial.step === first.name && isPartOf(trial.place, place),
  )
  const outcome = read?.outcome ?? 'not_given'
  return ['done', 'limit', 'pending'].includes(outcome) ? null : outcome
}
