import canonicalize from 'canonicalize'
import { array, assert, integer, property } from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { ADMINISTRATION, facts, Giving, madeProtocol } from '../runner/giving.ts'
import { drawAct } from '../runner/random-acts.ts'

/** Every kind of section in one protocol, within and beside each other. */
const SECTIONS = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: [dominant-first, shuffled]
    steps:
      - group: block
        steps:
          - { measured: grade, unit: "{score}", range: [0, 3] }
          - { rule: gate, when: "last(grade.value) == 0", end: block, credit: { force: 0 } }
          - choose: how
            cases:
              - { when: last(grade.value) > 2, steps: [{ measured: force, unit: kgf, range: [0, 9] }] }
              - { when: last(grade.value) > 1, steps: [{ position: turned }, { measured: weak, unit: kgf, range: [0, 9] }] }
            otherwise: [{ measured: least, unit: kgf, range: [0, 9] }]
      - ladder: smallest
        over: gaps
        level: spacing
        begin: g3
        accepted: sum(told.value) >= 2
        moves: { accepted: down, failed: up }
        turns: 2
        finds: least-accepted
        steps:
          - { for-each: pause, in: pauses, take: 1, steps: [{ choose: blank, cases: [{ when: pause.id == 'none', steps: [{ position: wait }] }] }] }
          - for-each: touch
            in: touches
            steps:
              - { measured: told, voids: 1, unit: "{count}", range: [0, 1] }
      - for-each: item
        in: items
        order: balanced
        steps:
          - { timed: run, start: { said: go }, stop: { seen: Home. } }
          - { for-each: rater, in: raters, steps: [{ measured: quality, of: run, unit: "{score}", range: [0, 3] }] }
  - { measured: last_one, unit: kgf, range: [0, 9] }
`,
  `
raters: { count: 2, unseen: true }
lists:
  gaps: [{ id: g2, gap: 2 mm }, { id: g3, gap: 3 mm }, { id: g4, gap: 4 mm }]
  touches: { draw: { one: 1, two: 1 }, alike-in-row: 1 }
  pauses: { draw: { plain: 1, none: 1 }, per: hand }
  items: [{ id: near }, { id: far }]
happenings:
  helped: { seen: The other hand helps., then: void }
accommodations: { seat: Another seat }
scores:
  - { score: found, each: hand, value: only(smallest.gap), unit: mm, better: lower, decimals: 0 }
  - { score: rated_by, each: rater, value: sum(quality.value), unit: "{score}", better: higher, decimals: 0 }
`,
)

const seeds = array(integer({ min: 0, max: 2 ** 30 }), { minLength: 5, maxLength: 120 })

function given(numbers: readonly number[]): Giving {
  const giving = new Giving(SECTIONS).begin(facts({ dominantBefore: 'left' }))
  for (const number of numbers) giving.take(drawAct(giving, number))
  return giving
}

const bytesOf = ({ runner, administration }: Pick<Giving, 'runner' | 'administration'>): string => {
  const standing = runner.standing(administration)
  const scores = scoreAll(standing).map(({ score, place, value, over, missing }) => ({
    score: score.name,
    place,
    value,
    over,
    missing: missing?.code,
  }))
  return canonicalize({ view: runner.view(administration, ADMINISTRATION), scores }) ?? ''
}

vi.setConfig({ testTimeout: 90_000 })

describe('laws of the runner, over random acts in every kind of section', () => {
  test('the state and the scores are the replay of the events', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(numbers)
        const runner = runnerFor(SECTIONS)
        const { administration, refused } = runner.replay(giving.log)
        expect(refused).toEqual([])
        expect(bytesOf({ runner, administration })).toBe(bytesOf(giving))
      }),
      { numRuns: 60 },
    )
  })

  test('undo of the last act gives back what stood before it', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(numbers)
        const before = bytesOf(giving)
        giving.wall += 1
        const act: EventBody = { kind: 'remarked', text: 'A remark' }
        if (giving.take(act) !== null) return
        giving.do({ kind: 'undone' })
        expect(bytesOf(giving)).toBe(before)
      }),
      { numRuns: 30 },
    )
  })

  test('undo of an act of a step gives back the step, and the same act taken again leads to the same trials', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(numbers)
        const { step } = giving.view()
        if (step === null || giving.view().phase !== 'giving') return
        const before = giving.where()
        const seen = JSON.stringify(giving.view().trials)
        if (giving.take(giving.body('skipped', { reason: 'No time' })) !== null) return
        giving.do({ kind: 'undone' })
        expect(giving.where()).toBe(before)
        expect(JSON.stringify(giving.view().trials)).toBe(seen)
      }),
      { numRuns: 40 },
    )
  })

  test('what was due has one row at the end, given or not, and nothing is left to give', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(numbers)
        giving.take({ kind: 'closed', what: 'test', place: {}, outcome: 'not_given', reason: '' })
        const { trials, phase, progress } = giving.view()
        if (phase !== 'giving') return
        const rows = trials.filter(({ status, practice }) => status === 'standing' && !practice)
        const keys = rows.map(({ step, place }) => `${step} ${canonicalize(place)}`)
        expect(keys.length).toBe(new Set(keys).size)
        expect(keys).toContain('last_one {}')
        for (const hand of ['left', 'right']) expect(keys).toContain(`grade ${canonicalize({ hand })}`)
        expect(progress.due).toBe(progress.passed)
      }),
      { numRuns: 60 },
    )
  })
})
