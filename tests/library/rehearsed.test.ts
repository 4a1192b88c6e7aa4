/**
 * Whatever client and course a rehearsal makes up, the library's scores are what a plain reckoning of the trials that
 * stand gives: an oracle that knows neither expressions nor places.
 */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { type ClientFacts, SIDES } from '../../protocols/client.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import type { Place } from '../../protocols/runner/events.ts'
import type { Trial } from '../../protocols/runner/view.ts'
import { belongs } from '../../protocols/scoring/rows.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { folderOf } from './folders.ts'
import { arms, facts } from './log-book.ts'

const status = fc.constantFrom('unaffected', 'affected', 'less_affected', 'absent', 'unknown')
const client: fc.Arbitrary<ClientFacts> = fc
  .record({
    dominantBefore: fc.constantFrom('right', 'left', 'mixed', 'not_settled', 'unknown'),
    usedNow: fc.constantFrom('right', 'left', 'mixed', 'unknown'),
    right: status,
    left: status,
  })
  .map(({ right, left, ...hands }) => facts({ ...hands, ...arms(right, left) }))

const uuid = (n: number): string => `01990000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`

/** Trials that stand after a made-up administration, and the scores worked out from them. */
function rehearsed(
  name: string,
  about: ClientFacts,
  seed: number,
  conditions: Readonly<Record<string, string>> = {},
) {
  const { protocol } = readProtocol(folderOf(name))
  if (!protocol) throw new Error(`${name} can't be read`)
  let id = 0
  const log = simulate(protocol, {
    seed,
    facts: about,
    client: null,
    user: 'student',
    kit: [],
    conditions,
    nextId: () => uuid((id += 1)),
    at: (ms) => new Date(Date.UTC(2026, 2, 2, 9) + ms).toISOString().replace('Z', '+00:00'),
    opened: {
      kind: 'opened',
      protocol: {
        id: name,
        version: protocol.version,
        hash: '0'.repeat(64),
        language: 'en',
        wording: null,
        from: 'library',
      },
      program: '0.1.0',
      rehearsal: true,
      visit: null,
      on: '2026-03-02',
      examiner: { id: uuid(0xffff), name: 'Student' },
    },
  })
  const runner = runnerFor(protocol)
  const { administration, refused } = runner.replay(log)
  expect(refused).toEqual([])
  const standing = runner.standing(administration)
  const trials = standing.trials.filter((trial) => trial.status === 'standing' && !trial.practice)
  const scored = scoreAll(standing)
  const value = (score: string, hand: string | null) =>
    scored.find((each) => each.score.name === score && (hand === null || each.place.hand === hand))?.value ??
    null
  const each = (score: string, place: Place) =>
    scored.find((one) => one.score.name === score && belongs(one.place, place))?.value ?? null
  return { trials, value, each }
}

/** Values of a column in one hand, in the order given; null where a trial has none. */
const column = (
  trials: readonly Trial[],
  step: string,
  reading: string,
  hand: string | null,
): (number | null)[] =>
  trials
    .filter((trial) => trial.step === step && (hand === null || trial.place.hand === hand))
    .map((trial) => {
      const found = trial.readings[reading]?.value
      return typeof found === 'number' ? found : null
    })

/** A reckoning that has no value unless every value is there. */
const all = (
  values: readonly (number | null)[],
  count: number,
  reckon: (numbers: readonly number[]) => number,
) => {
  const numbers = values.filter((value) => value !== null)
  return numbers.length === count && values.length === count ? reckon(numbers) : null
}

const sumOf = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0)

const near = (expected: number | null): unknown => (expected === null ? null : expect.closeTo(expected, 9))

const SEED = fc.integer({ min: 1, max: 2 ** 31 })

test('STD-ADM-9: nine-hole peg, any course: the first run, and the fastest of three', () => {
  fc.assert(
    fc.property(client, SEED, (about, seed) => {
      const { trials, value } = rehearsed('nine_hole_peg', about, seed, { runs: '3' })
      for (const hand of SIDES) {
        const times = column(trials, 'run', 'time', hand)
        expect(value('time', hand)).toEqual(near(times[0] ?? null))
        expect(value('best', hand)).toEqual(near(all(times, 3, (numbers) => Math.min(...numbers))))
      }
    }),
    { numRuns: 20 },
  )
})

test('STD-ADM-9: box and block, any course: the end count of the minute that stands', () => {
  fc.assert(
    fc.property(client, SEED, (about, seed) => {
      const { trials, value } = rehearsed('box_and_block', about, seed)
      for (const hand of SIDES) {
        const counts = column(trials, 'moved', 'count', hand)
        expect(value('blocks', hand)).toEqual(near(all(counts, 1, ([count]) => count ?? NaN)))
      }
    }),
    { numRuns: 10 },
  )
})

test('STD-ADM-9: grip strength, any course: mean and highest of three, highest of both hands', () => {
  fc.assert(
    fc.property(client, SEED, (about, seed) => {
      const { trials, value } = rehearsed('grip_strength', about, seed)
      for (const hand of SIDES) {
        const squeezes = column(trials, 'squeeze', 'value', hand)
        expect(value('mean_of_3', hand)).toEqual(
          near(all(squeezes, 3, (numbers) => numbers.reduce((sum, each) => sum + each) / 3)),
        )
        expect(value('highest_of_3', hand)).toEqual(near(all(squeezes, 3, (numbers) => Math.max(...numbers))))
      }
      const both = column(trials, 'squeeze', 'value', null)
      expect(value('highest_of_both', null)).toEqual(near(all(both, 6, (numbers) => Math.max(...numbers))))
    }),
    { numRuns: 20 },
  )
})

test('STD-ADM-9: functional dexterity, any course: seconds, and the same with five and ten for what was keyed', () => {
  fc.assert(
    fc.property(client, SEED, (about, seed) => {
      const { trials, value } = rehearsed('functional_dexterity', about, seed)
      for (const hand of SIDES) {
        const run = trials.find(({ step, place }) => step === 'run' && place.hand === hand)
        const [time = null] = column(trials, 'run', 'time', hand)
        const worth: Readonly<Record<string, number>> = { supinated: 5, braced: 5, dropped: 10 }
        const added = (run?.happenings ?? []).reduce((sum, name) => sum + (worth[name] ?? 0), 0)
        expect(value('net', hand)).toEqual(near(time))
        expect(value('total', hand)).toEqual(near(time === null ? null : time + added))
        expect(value('speed', hand)).toEqual(near(time === null ? null : 16 / time))
      }
    }),
    { numRuns: 20 },
  )
})

test('STD-ADM-9: finger taps, any course: five in a row within five, else the best five of ten', () => {
  fc.assert(
    fc.property(client, SEED, (about, seed) => {
      const { trials, value } = rehearsed('finger_tapping', about, seed)
      for (const hand of SIDES) {
        const counts = column(trials, 'taps', 'count', hand)
        const used = all(counts.slice(-5), 5, (five) =>
          Math.max(...five) - Math.min(...five) <= 5 ? five.reduce((sum, each) => sum + each) / 5 : NaN,
        )
        const best = all(counts, 10, (ten) =>
          [...ten]
            .sort((a, b) => b - a)
            .slice(0, 5)
            .reduce((sum, each) => sum + each / 5, 0),
        )
        expect(value('taps_key', hand)).toEqual(near(Number.isNaN(used) ? best : used))
      }
    }),
    { numRuns: 5 },
  )
})

test('STD-ADM-9: action research arm test, any course: the sum of nineteen grades, seen or credited', () => {
  const phase = fc.constantFrom('early', 'later', 'not_stroke')
  fc.assert(
    fc.property(client, SEED, phase, (about, seed, when) => {
      const { trials, value } = rehearsed('action_research_arm', about, seed, { phase: when })
      for (const hand of SIDES) {
        const grades = column(trials, 'quality', 'grade', hand)
        const sum = all(grades, 19, (numbers) => numbers.reduce((total, each) => total + each, 0))
        expect(value('total', hand)).toEqual(near(sum))
      }
    }),
    { numRuns: 5 },
  )
})

test('STD-ADM-9: pinch strength, any course: a mean of three of each kind, none with another pattern or at the end of the scale', () => {
  const scale = fc.constantFrom('lbf_30', 'lbf_60')
  fc.assert(
    fc.property(client, SEED, scale, (about, seed, full) => {
      const { trials, each } = rehearsed('pinch_strength', about, seed, {
        full_scale: full,
        gauge_build: 'spring',
      })
      for (const hand of SIDES) {
        for (const pattern of ['tip', 'key', 'palmar']) {
          const of = trials.filter(({ place }) => place.pattern === pattern)
          const pinches = column(of, 'pinch', 'value', hand)
          const end = full === 'lbf_30' ? 13.6 : 27.2
          const atEnd = pinches.some((value) => value !== null && value >= end)
          const mean = all(pinches, 3, (numbers) => sumOf(numbers) / 3)
          expect(each('mean_of_3', { hand, pattern })).toEqual(near(atEnd ? null : mean))
        }
      }
    }),
    { numRuns: 5 },
  )
})

test('STD-ADM-9: Jebsen-Taylor, any course: seven times summed, or six without writing, or nothing', () => {
  const cap = fc.constantFrom('none', 's45', 's180')
  fc.assert(
    fc.property(client, SEED, cap, (about, seed, ends) => {
      const { trials, value } = rehearsed('jebsen_taylor', about, seed, { template: 'used', cap: ends })
      for (const hand of SIDES) {
        expect(value('total', hand)).toEqual(near(all(column(trials, 'did', 'time', hand), 7, sumOf)))
        const six = trials.filter(({ place }) => place.subtest !== 'writing')
        expect(value('without_writing', hand)).toEqual(near(all(column(six, 'did', 'time', hand), 6, sumOf)))
      }
    }),
    { numRuns: 5 },
  )
})

test('STD-ADM-9: Wolf motor function test, any course: the eighth of fifteen times in order', () => {
  const fill = fc.constantFrom(120, 121)
  fc.assert(
    fc.property(client, SEED, fill, (about, seed, seconds) => {
      const { trials, value } = rehearsed('wolf_motor_function', about, seed, {
        phase: 'chronic',
        fill: `${seconds} s`,
      })
      for (const hand of SIDES) {
        const own = trials.filter(({ step, place }) => step === 'did' && place.hand === hand)
        const times = own.map(({ outcome, readings }) => {
          if (outcome === 'limit' || outcome === 'unable') return seconds
          const { value: time = null } = readings.time ?? {}
          return typeof time === 'number' ? time : null
        })
        const eighth = all(times, 15, (numbers) => [...numbers].sort((a, b) => a - b)[7] ?? NaN)
        expect(value('median_time', hand)).toEqual(near(eighth))
      }
    }),
    { numRuns: 2 },
  )
})
