import { describe, expect, test } from 'vitest'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { administrationView } from '../../protocols/runner/view.ts'
import { ADMINISTRATION, facts, madeProtocol, uuid } from '../runner/giving.ts'

const KINDS: Readonly<Record<string, string>> = {
  'questions of each form': `
  - { ask: felt, text: Felt?, options: { yes: "Yes", no: "No" }, voids: 1 }
  - { ask: years, text: How many?, range: [0, 25], unit: a }
  - { ask: remark, text: What else?, words: 20 }`,
  'grades beside a time': `
  - { timed: carry, start: { said: go }, stop: { seen: home }, limit: 60 s, voids: 2 }
  - { rated: quality, of: carry, scale: { 0: None, 1: Part, 2: Full }, highest: "last(carry.time) < 20 ? 2 : 1" }
  - { rated: reflex, scale: { 0: None, 1: Part, 2: Full }, allow: [0, 2] }`,
  'taps by a cue and by the first press': `
  - { tapped: taps, window: 10 s, start: { said: go }, bounce: 40 ms, voids: 1 }
  - { tapped: more, window: 5 s }`,
  'a time with moments on the way': `
  - timed: turn
    start: { said: go }
    stop: { seen: last peg in }
    limit: 300 s
    reached: { pegs: { of: 16 } }
    splits: { half: The eighth peg is in., corner: The corner is turned. }`,
}

describe.each(Object.entries(KINDS))('a simulated administration of %s', (_name, steps) => {
  const protocol = madeProtocol(steps)
  const simulated = (seed: number) => {
    let ids = 0
    return simulate(protocol, {
      seed,
      facts: facts(),
      client: null,
      opened: {
        kind: 'opened',
        protocol: {
          id: protocol.id,
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
  }

  test('is given to its end with a value in every trial, and its replay is the same', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const runner = runnerFor(protocol)
      const { administration, refused } = runner.replay(simulated(seed))
      expect(refused).toEqual([])
      const view = administrationView.parse(runner.view(administration, ADMINISTRATION))
      expect(view.phase).toBe('finished')
      const standing = view.trials.filter(({ status }) => status === 'standing')
      const empty = standing.filter(({ readings }) => Object.keys(readings).length === 0)
      expect(empty.filter(({ outcome }) => outcome === 'done')).toEqual([])
      expect(new Set(standing.map(({ step }) => step)).size).toBe(protocol.steps.length)
    }
  })
})
