/** What tests of several kinds of steps do alike. */
import { scopeAt } from '../../protocols/scoring/scope.ts'
import { Giving } from '../runner/giving.ts'

/** The same administration in a new start of the program: its log replayed, the restart told. */
export function resumed(giving: Giving): Giving {
  const again = new Giving(giving.protocol)
  for (const { body } of giving.log) again.take(body)
  again.now = 5
  again.clock = 'page-2'
  again.do({ kind: 'interrupted', cause: 'restart' })
  if (again.view().phase !== 'giving') again.do({ kind: 'confirmed', what: 'resume' })
  return again
}

/** A score seen from the whole administration; null where it has no value. */
export function scoreOf(giving: Giving, name: string): number | null {
  const datum = scopeAt(giving.runner.standing(giving.administration), {}).read(name)
  return datum?.is === 'number' ? datum.n : null
}
