import { expect, test } from 'vitest'
import { projector } from '../../main/calls/projector.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import { folderOf } from '../library/folders.ts'
import { facts, libraryProtocol, uuid } from '../runner/giving.ts'

const log = (id: string, seed: number) => {
  const protocol = libraryProtocol(id)
  let ids = 0
  return simulate(protocol, {
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
    at: (ms) => new Date(Date.UTC(2026, 2, 2, 9) + ms).toISOString(),
  })
}

test.each(['nine_hole_peg', 'box_and_block', 'grip_strength'])(
  'while %s is given, an event that is said to touch no list changes none',
  (id) => {
    const untouched = [1, 2, 3].flatMap((seed) => {
      let state = projector.begin(folderOf(id).files)
      return log(id, seed).flatMap((event) => {
        const before = projector.project(state)
        state = projector.take(state, event)
        return projector.touches(event.body.kind) ? [] : [[before, projector.project(state)] as const]
      })
    })
    for (const [before, after] of untouched) expect(after).toEqual(before)
    expect(untouched.length).toBeGreaterThan(20)
  },
)
