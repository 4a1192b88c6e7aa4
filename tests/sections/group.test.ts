import { describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

const PROTOCOL = madeProtocol(
  `
  - { measured: before, unit: "{score}", range: [0, 2] }
  - group: block
    steps:
      - { rule: gate, when: "last(before.value) < 1", end: block, credit: { shown: 0 } }
      - { position: seated }
      - for-each: move
        in: moves
        steps:
          - repeat: tries
            times: { least: 1, most: 3 }
            until: last(shown.value) == 2
            steps:
              - { measured: shown, unit: "{score}", range: [0, 2] }
      - { measured: noticed, unit: "{score}", range: [0, 2] }
  - { measured: after, unit: "{score}", range: [0, 2] }
`,
  'lists: { moves: [{ id: high }, { id: low }] }',
)
const begun = () => new Giving(PROTOCOL).begin()

describe('a group', () => {
  test('gives its steps once, in the order of the file', () => {
    const giving = begun().measure(2)
    expect(giving.where()).toBe('seated: waiting')
    giving.press('set').measure(2).measure(1).measure(2)
    expect(giving.where()).toBe('noticed: waiting')
    giving.measure(1)
    expect(giving.where()).toBe('after: waiting')
    expect(giving.rows('shown')).toEqual(['high 1 done value 2', 'low 1 done value 1', 'low 2 done value 2'])
  })

  test('is ended by a rule before its steps, which credits what the group holds, loops and all', () => {
    const giving = begun().measure(0)
    expect(giving.where()).toBe('after: waiting')
    expect(giving.rows('shown')).toEqual(['high 1 credited value 0', 'low 1 credited value 0'])
    expect(giving.rows('noticed')).toEqual(['not_given'])
    expect(giving.view().rules).toMatchObject([{ rule: 'gate', did: 'credited', place: {} }])
  })

  test('leaves no trace in a place', () => {
    const giving = begun().measure(2).press('set')
    expect(giving.view().step?.passes.map(({ loop }) => loop)).toEqual(['move', 'tries'])
  })

  test('undo of the act that a gate followed gives back the way', () => {
    const giving = begun().measure(0).do({ kind: 'undone' })
    expect(giving.where()).toBe('before: entered')
    expect(giving.rows('shown')).toEqual([])
  })

  test('is rehearsed to the end', () => {
    for (const seed of [1, 2, 3]) expect(rehearsed(PROTOCOL, seed).end).toBe('finished')
  })
})
