import { describe, expect, test } from 'vitest'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { administrationView } from '../../protocols/runner/view.ts'
import { ADMINISTRATION, facts, libraryProtocol, uuid } from '../runner/giving.ts'

const simulated = (id: string, seed: number) => {
  const protocol = libraryProtocol(id)
  let ids = 0
  const log = simulate(protocol, {
    seed,
    facts: facts({ dominantBefore: 'left' }),
    client: null,
    opened: {
      kind: 'opened',
      protocol: {
        id,
        version: protocol.version,
        hash: '0'.repeat(64),
        language: 'en',
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
    nextId: () => uuid((ids += 1)),
    at: (ms) => `2026-03-02T09:${String(Math.floor(ms / 60_000)).padStart(2, '0')}:00+01:00`,
  })
  return { protocol, log }
}

describe.each(['nine_hole_peg', 'box_and_block', 'grip_strength'])(
  'a simulated administration of %s',
  (id) => {
    test('is given to its end, and its replay is the same', () => {
      for (const seed of [1, 2, 3, 4, 5]) {
        const { protocol, log } = simulated(id, seed)
        const { administration, refused } = runnerFor(protocol).replay(log)
        expect(refused).toEqual([])
        const view = administrationView.parse(runnerFor(protocol).view(administration, ADMINISTRATION))
        expect(view.phase).toBe('finished')
        expect(view.unexplained).toEqual([])
        expect(
          view.trials.filter((trial) => trial.status === 'standing' && !trial.practice).length,
        ).toBeGreaterThan(1)
      }
    })

    test('is the same for the same seed and another for another', () => {
      expect(simulated(id, 7).log).toEqual(simulated(id, 7).log)
      expect(simulated(id, 7).log).not.toEqual(simulated(id, 8).log)
    })
  },
)
