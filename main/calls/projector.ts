/** What the records' read models take from the domain: phase, deviations, basis and, at the end, the scores. */
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import type { Administration } from '../../protocols/runner/index.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import type { Projected, ProjectedScore, Projector } from '../records/index.ts'
import { type Kept, keptProtocol } from './kept.ts'

interface State {
  readonly kept: Kept
  readonly administration: Administration
}

/** An id for views that nobody sees. */
const NOBODY = '00000000-0000-0000-0000-000000000000'

/** Events of the runner after which nothing that a list shows is different; those of steps are like them. */
const UNSEEN: ReadonlySet<string> = new Set(['clock', 'signalled', 'ordered', 'ruled', 'remarked'])

export const projector: Projector<State> = {
  begin(files) {
    if (!files) throw new Error('The protocol of this administration is not kept.')
    const kept = keptProtocol(files)
    return { kept, administration: kept.runner.begin() }
  },
  touches: (kind) => !UNSEEN.has(kind) && !kind.includes('.'),
  take({ kept, administration }, event) {
    const next = kept.runner.take(administration, event)
    if ('refused' in next) throw new Error(`The runner refuses an event that is kept: ${next.refused}`)
    return { kept, administration: next }
  },
  project({ kept, administration }) {
    const view = kept.runner.view(administration, NOBODY)
    const ended = ENDED.has(view.phase)
    return {
      title: view.protocol.title,
      phase: listedPhase(view),
      examiner: view.examiner,
      on: view.on,
      // Steps may add some on the way: counted once it is over, like the scores.
      deviations: ended ? view.deviations.length : 0,
      basis: basisOf(view.prepared),
      scores: ended ? scoresOf({ kept, administration }) : [],
    } satisfies Projected
  },
}

const ENDED: ReadonlySet<string> = new Set(['finished', 'rating', 'withdrawn'])

/** The phase as lists have it: a finished test of which grades are still to come is told apart. */
const listedPhase = ({ phase, raters }: ReturnType<Kept['runner']['view']>): string =>
  phase === 'finished' && raters.some(({ toCome }) => toCome > 0) ? 'to_rate' : phase

type Prepared = ReturnType<Kept['runner']['view']>['prepared']

/** Two administrations whose conditions and kit are the same have the same basis. */
function basisOf(prepared: Prepared): string {
  if (!prepared) return ''
  const conditions = Object.entries(prepared.conditions).sort(([a], [b]) => (a < b ? -1 : 1))
  return JSON.stringify([conditions, prepared.kit.map((piece) => piece.id).sort()])
}

function scoresOf({ kept: { protocol, runner }, administration }: State): readonly ProjectedScore[] {
  const wording = wordingFor(protocol, runner.view(administration, NOBODY).protocol.wording)
  return scoreAll(runner.standing(administration)).map(({ score, place, value, over, missing }) => ({
    score: score.name,
    place: Object.fromEntries(Object.entries(place).map(([loop, pass]) => [loop, String(pass)])),
    title: textOf(protocol, wording, score.title),
    value,
    over,
    unit: score.unit,
    decimals: score.decimals,
    better: score.better,
    missing: missing?.code ?? null,
  }))
}
