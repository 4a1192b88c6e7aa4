import canonicalize from 'canonicalize'
import { array, assert, integer, property } from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { facts, Giving, madeProtocol } from './giving.ts'

/** Rules that end a part, a hand and the test, and a repeat that ends by itself, in one small protocol. */
const RULED = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - for-each: part
        in: parts
        steps:
          - repeat: attempt
            times: { least: 1, most: 3 }
            until: "last(grade.value) > 1"
            steps:
              - { measured: grade, unit: "{score}", range: [0, 3] }
          - { rule: full, when: "last(grade.value) == 3", end: part, credit: { grade: 3 } }
          - { rule: poor, when: "sum(grade.value) == 0", end: hand }
      - { measured: squeeze, unit: "{score}", range: [0, 3] }
      - { rule: none, when: "last(squeeze.value) == 0", end: test, confirm: End here? }
  - { measured: last_one, unit: "{score}", range: [0, 3] }
`,
  'lists: { parts: [{ id: near }, { id: middle }, { id: far }] }',
)

const CLOSED = ['trial', 'hand', 'part', 'attempt', 'test']

/** An act that goes on, puts right, takes up, takes back or closes, drawn from where it stands. */
function actOf(giving: Giving, number: number): EventBody {
  const view = giving.view()
  const [value, which, what] = [number % 4, Math.floor(number / 4) % 16, Math.floor(number / 64) % 1000]
  const done = view.trials.filter(({ status, outcome }) => status === 'standing' && outcome === 'done')
  const trial = done[what % Math.max(1, done.length)]
  if (which < 3 && trial)
    return { kind: 'corrected', trial: trial.id, column: 'value', value, reason: 'Misread' } as EventBody
  if (which === 3) return { kind: 'undone' }
  if (which === 4 && what % 3 === 0) {
    const place = view.step?.place ?? {}
    return {
      kind: 'closed',
      what: CLOSED[what % 5] ?? '',
      place,
      outcome: 'refused',
      reason: '',
    } as EventBody
  }
  const missing = view.missing[what % Math.max(1, view.missing.length)]
  if (missing !== undefined && view.step === null && view.asking === null)
    return { kind: 'taken_up', ...missing }
  if (view.asking !== null) {
    const { rule, place } = view.asking
    return { kind: 'ruled', rule, place, apply: what % 2 === 0 }
  }
  if (view.step === null) return { kind: 'remarked', text: 'All given' }
  return view.step.state === 'waiting'
    ? giving.body('entered', { value, confirmed: false })
    : giving.body('kept', { stamp: null })
}

const numbers = array(integer({ min: 0, max: 2 ** 30 }), { minLength: 40, maxLength: 160, size: 'max' })
const bytesOf = (giving: Giving) => canonicalize(giving.view())

/** Gives what the numbers say; `look` hears what each act came to. */
function given(
  all: readonly number[],
  look?: (giving: Giving, act: EventBody, before: Giving['log']) => void,
) {
  const giving = new Giving(RULED).begin(facts({ dominantBefore: 'right' }))
  for (const number of all) {
    const before = [...giving.log]
    const act = actOf(giving, number)
    if (giving.take(act) === null) look?.(giving, act, before)
  }
  return giving
}

const standing = (giving: Giving) =>
  giving
    .view()
    .trials.filter(({ status }) => status === 'standing')
    .map(({ step, place }) => `${step} ${canonicalize(place)}`)

vi.setConfig({ testTimeout: 90_000 })

describe('laws of giving what is missing, over random corrections', () => {
  test('it happens often, is taken wherever it is offered at the end, and each trial has one row', () => {
    let takenUp = 0
    assert(
      property(numbers, (all) => {
        const giving = given(all, (now, act) => {
          if (act.kind === 'taken_up') takenUp += 1
          const rows = standing(now)
          expect(rows.length).toBe(new Set(rows).size)
        })
        const { missing, step, asking } = giving.view()
        for (const named of step === null && asking === null ? missing.slice(0, 1) : [])
          expect(giving.take({ kind: 'taken_up', ...named })).toBeNull()
        giving.take({ kind: 'closed', what: 'test', place: {}, outcome: 'not_given', reason: '' })
        const { progress } = giving.view()
        expect(progress.due).toBe(progress.passed)
        const rows = standing(giving)
        expect(rows).toContain('last_one {}')
        for (const hand of ['left', 'right']) expect(rows).toContain(`squeeze ${canonicalize({ hand })}`)
      }),
      { numRuns: 40 },
    )
    expect(takenUp).toBeGreaterThan(40)
  })

  test('a hand that is ended again while something missing is given leaves what was closed before as it is', () => {
    const giving = new Giving(RULED).begin(facts({ dominantBefore: 'right' }))
    const correct = (value: number) => {
      const trial = giving.view().trials[0]?.id ?? ''
      giving.do({ kind: 'corrected', trial, column: 'value', value, reason: 'Misread' })
    }
    const takeUp = (rule: string) => {
      const named = giving.view().missing.find((each) => each.rule === rule)
      if (named === undefined) throw new Error(`${rule} is not missing`)
      giving.do({ kind: 'taken_up', ...named })
    }
    const close = (what: string) =>
      giving.do({
        kind: 'closed',
        what,
        place: giving.view().step?.place ?? {},
        outcome: 'refused',
        reason: '',
      })
    giving.measure(3)
    correct(0)
    close('trial')
    close('hand')
    close('trial')
    takeUp('full')
    correct(1)
    takeUp('poor')
    correct(0)
    giving.measure(0).measure(0).measure(0)
    const squeezes = giving
      .view()
      .trials.filter(
        ({ step, status, place }) => step === 'squeeze' && status === 'standing' && place.hand === 'right',
      )
    expect(squeezes.map(({ outcome }) => outcome)).toEqual(['refused'])
  })

  test('the state is the replay of the events, and taking up taken back has never been', () => {
    assert(
      property(numbers, (all) => {
        const giving = given(all, (now, act, before) => {
          if (act.kind !== 'taken_up') return
          const { administration } = runnerFor(RULED).replay(before)
          now.do({ kind: 'undone' })
          expect(bytesOf(now)).toBe(canonicalize(now.runner.view(administration, now.view().id)))
          now.do(act)
        })
        const { administration, refused } = runnerFor(RULED).replay(giving.log)
        expect(refused).toEqual([])
        expect(bytesOf(giving)).toBe(canonicalize(giving.runner.view(administration, giving.view().id)))
      }),
      { numRuns: 15 },
    )
  })
})
