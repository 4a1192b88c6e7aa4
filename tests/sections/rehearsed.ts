/** Whole administrations by a simulated client, for the tests of sections. */
import type { Protocol } from '../../protocols/language/model.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import type { Recorded } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { ADMINISTRATION, facts, uuid } from '../runner/giving.ts'

interface Rehearsed {
  readonly log: readonly Recorded[]
  readonly view: AdministrationView
  /** The phase in which it ended. */
  readonly end: AdministrationView['phase']
}

/** A whole administration; its log replayed by another runner, which must refuse nothing. */
export function rehearsed(protocol: Protocol, seed: number): Rehearsed {
  let ids = 0
  const log = simulate(protocol, {
    seed,
    facts: facts({ dominantBefore: 'right' }),
    client: uuid(901),
    opened: {
      kind: 'opened',
      protocol: {
        id: protocol.id,
        version: protocol.version,
        hash: '0'.repeat(64),
        language: protocol.language,
        wording: null,
        from: 'library',
      },
      program: 'test',
      rehearsal: true,
      visit: null,
      on: '2026-03-02',
      examiner: { id: uuid(900), name: 'Ida' },
    },
    user: 'Ida',
    kit: [],
    conditions: {},
    nextId: () => {
      ids += 1
      return uuid(ids)
    },
    at: (ms) => `2026-03-02T09:${String(Math.floor(ms / 60_000) % 60).padStart(2, '0')}:00+01:00`,
  })
  const runner = runnerFor(protocol)
  const { administration, refused } = runner.replay(log)
  if (refused.length > 0) throw new Error(`The replay refused ${refused[0]?.event.body.kind}.`)
  const view = runner.view(administration, ADMINISTRATION)
  return { log, view, end: view.phase }
}
