import canonicalize from 'canonicalize'
import { array, assert, integer, property } from 'fast-check'
import { afterEach, describe, expect, test, vi } from 'vitest'
import type { EventBody, Recorded } from '../../protocols/runner/events.ts'
import { type Runner, runnerFor } from '../../protocols/runner/index.ts'
import { ADMINISTRATION, facts, Giving } from './giving.ts'
import { drawAct, EVERYTHING } from './random-acts.ts'

const seeds = array(integer({ min: 0, max: 2 ** 30 }), { minLength: 5, maxLength: 90 })

/** Gives acts drawn from the numbers; a law may look before and after each of them. */
function given(
  numbers: readonly number[],
  look?: (giving: Giving, act: EventBody, refused: string | null, before: string) => void,
): Giving {
  const giving = new Giving(EVERYTHING).begin(facts({ dominantBefore: 'left' }))
  for (const number of numbers) {
    const act = drawAct(giving, number)
    const before = look === undefined ? '' : bytesOf(giving.runner, giving.administration)
    const refused = giving.take(act)
    look?.(giving, act, refused, before)
  }
  return giving
}

/** The whole state as bytes: what a screen sees and what scores rest on. */
function bytesOf(runner: Runner, administration: Giving['administration']): string {
  const { protocol: _protocol, ...standing } = runner.standing(administration)
  return canonicalize({ view: runner.view(administration, ADMINISTRATION), standing }) ?? ''
}

const ACTS_KEPT = new Set(['opened', 'assigned', 'prepared', 'confirmed', 'clock', 'interrupted', 'noted'])
const BY_CLOCK = new Set(['timed.limit_reached', 'counted.window_ended', 'rest.began', 'rest.over'])
const isAutomatic = ({ body }: Recorded) =>
  BY_CLOCK.has(body.kind) || (body.kind === 'ordered' && 'rule' in body && body.rule !== 'chosen')

/** The events that stand: each undo takes away the last act and what followed from it by itself. */
function eventsThatStand(log: readonly Recorded[]): Recorded[] {
  const stands: Recorded[] = []
  for (const event of log) {
    if (event.body.kind !== 'undone') {
      stands.push(event)
      continue
    }
    const at = stands.findLastIndex((each) => !ACTS_KEPT.has(each.body.kind) && !isAutomatic(each))
    const after = stands.splice(at).slice(1)
    stands.push(...after.filter((each) => !isAutomatic(each)))
  }
  return stands
}

vi.setConfig({ testTimeout: 90_000 })

afterEach(() => {
  vi.useRealTimers()
})

describe('laws of the runner, over random acts', () => {
  test('the state is the replay of the events', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(numbers)
        const { administration, refused } = runnerFor(EVERYTHING).replay(giving.log)
        expect(refused).toEqual([])
        expect(bytesOf(giving.runner, administration)).toBe(bytesOf(giving.runner, giving.administration))
      }),
      { numRuns: 80 },
    )
  })

  test('an event that is refused changes nothing', () => {
    assert(
      property(seeds, (numbers) => {
        const changed: string[] = []
        given(numbers, (giving, act, refused, before) => {
          const after = refused === null ? before : bytesOf(giving.runner, giving.administration)
          if (after !== before) changed.push(act.kind)
        })
        expect(changed).toEqual([])
      }),
      { numRuns: 30 },
    )
  })

  test('what is undone has never been', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(
          numbers.flatMap((number) => (number % 5 === 0 ? [number, -1] : [number])).map(Math.abs),
        )
        const { administration } = runnerFor(EVERYTHING).replay(eventsThatStand(giving.log))
        expect(bytesOf(giving.runner, administration)).toBe(bytesOf(giving.runner, giving.administration))
      }),
      { numRuns: 80 },
    )
  })

  test('undo of the last act gives back what stood before it', () => {
    assert(
      property(seeds, (numbers) => {
        const giving = given(numbers)
        const before = bytesOf(giving.runner, giving.administration)
        giving.wall += 1
        const act: EventBody = { kind: 'remarked', text: 'A remark' }
        if (giving.take(act) !== null) return
        giving.do({ kind: 'undone' })
        expect(bytesOf(giving.runner, giving.administration)).toBe(before)
      }),
      { numRuns: 30 },
    )
  })

  test('two replays on different days give the same bytes', () => {
    assert(
      property(seeds, (numbers) => {
        const { log, runner } = given(numbers)
        vi.useFakeTimers({ now: new Date('2026-03-02T09:00:00Z') })
        const first = bytesOf(runner, runnerFor(EVERYTHING).replay(log).administration)
        vi.useFakeTimers({ now: new Date('2031-12-31T23:59:59Z') })
        const second = bytesOf(runner, runnerFor(EVERYTHING).replay(log).administration)
        vi.useRealTimers()
        expect(second).toBe(first)
      }),
      { numRuns: 25 },
    )
  })

  test('every view is one that the contract lets through, and every trial has an id of its own', () => {
    assert(
      property(seeds, (numbers) => {
        const { trials } = given(numbers).view()
        expect(new Set(trials.map(({ id }) => id)).size).toBe(trials.length)
      }),
      { numRuns: 30 },
    )
  })

  test('what was due has one row at the end, given or not', () => {
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
        for (const hand of ['left', 'right']) expect(keys).toContain(`moved ${canonicalize({ hand })}`)
        expect(progress.due).toBe(progress.passed)
      }),
      { numRuns: 80 },
    )
  })
})
