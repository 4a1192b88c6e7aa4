/** Laws that the scores of ordinal and threshold tests keep, whatever course a made-up administration takes. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { ClientFacts } from '../../protocols/client.ts'
import type { Place } from '../../protocols/runner/events.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { scoreAll, type Scored, scoresEqual } from '../../protocols/scoring/scores.ts'
import type { Standing } from '../../protocols/scoring/standing.ts'
import { arms, facts } from './log-book.ts'
import { libraryProtocol, uuid } from '../runner/giving.ts'

const CLIENT: ClientFacts = facts(arms('unaffected', 'affected'))

/** The loops whose passes stand apart: what is given in one of them has no say in another. */
const APART: Readonly<Record<string, readonly string[]>> = {
  fugl_meyer_upper: ['hand', 'block'],
  two_point_discrimination: ['hand', 'site'],
  // False answers are counted over the sites of a hand.
  touch_threshold: ['hand'],
}

interface Course {
  readonly standing: Standing
  readonly again: Standing
}

const known = new Map<string, Course>()

/** One course, replayed twice from its log as text: made up once for all laws. */
function courseOf(id: string, seed: number): Course {
  const key = `${id} ${seed}`
  const course = known.get(key) ?? freshCourse(id, seed)
  known.set(key, course)
  return course
}

function freshCourse(id: string, seed: number): Course {
  const protocol = libraryProtocol(id)
  const runner = runnerFor(protocol)
  let ids = 0
  const log = simulate(protocol, {
    seed,
    facts: CLIENT,
    client: null,
    opened: {
      kind: 'opened',
      protocol: {
        id,
        version: protocol.version,
        hash: 'c'.repeat(64),
        language: 'en',
        wording: null,
        from: 'library',
      },
      program: 'test',
      rehearsal: false,
      visit: null,
      on: '2026-06-15',
      examiner: { id: uuid(900), name: 'Ida' },
    },
    user: uuid(900),
    kit: [],
    conditions: {},
    nextId: () => uuid((ids += 1)),
    at: (ms) => new Date(Date.UTC(2026, 5, 15, 8) + ms).toISOString(),
  })
  const replayed = () => runner.standing(runner.replay(JSON.parse(JSON.stringify(log))).administration)
  return { standing: replayed(), again: replayed() }
}

const OTHER: Readonly<Record<string, string>> = { left: 'right', right: 'left' }

const swapped = (place: Place): Place =>
  'hand' in place ? { ...place, hand: OTHER[String(place.hand)] ?? String(place.hand) } : place

const otherSide = (one: ClientFacts['usedNow']): ClientFacts['usedNow'] =>
  one === 'left' ? 'right' : one === 'right' ? 'left' : one

/** The same administration with left and right told the other way round. */
function relabelled(standing: Standing): Standing {
  const { facts: told, trials, orders } = standing
  const { left, right } = told.arms
  return {
    ...standing,
    facts: {
      ...told,
      arms: { left: right, right: left },
      dominantBefore: otherSide(told.dominantBefore),
      usedNow: otherSide(told.usedNow),
    },
    trials: trials.map((trial) => ({ ...trial, place: swapped(trial.place) })),
    orders: orders.map((order) => ({
      ...order,
      place: swapped(order.place),
      items: order.items.map((item) => OTHER[item] ?? item),
    })),
  }
}

/** Why a score has no value names the hand too. */
const mirrored = (one: Scored): Scored => ({
  ...one,
  place: swapped(one.place),
  missing: one.missing && { ...one.missing, detail: swapped(one.missing.detail) },
})

const inOrder = (scores: readonly Scored[]): readonly Scored[] =>
  scores.toSorted((a, b) =>
    JSON.stringify([a.score.name, a.place]) < JSON.stringify([b.score.name, b.place]) ? -1 : 1,
  )

/** The trials of each pass that stands apart, one pass after the other in another order. */
function reordered({ trials }: Standing, loops: readonly string[], by: number): Standing['trials'] {
  const groups = [
    ...Map.groupBy(trials, ({ place }) => JSON.stringify(loops.map((loop) => place[loop] ?? null))).values(),
  ]
  const turn = by % groups.length
  return [...groups.slice(turn), ...groups.slice(0, turn)].toReversed().flat()
}

const SEED = fc.constantFrom(11, 12, 13)
const FEW = { numRuns: 2 }

describe.each(Object.keys(APART))('%s, any course', (id) => {
  test('STD-ADM-9 scores recomputed from the log agree to the last bit', () => {
    fc.assert(
      fc.property(SEED, (seed) => {
        const { standing, again } = courseOf(id, seed)
        expect(scoresEqual(scoreAll(standing), scoreAll(again))).toBe(true)
      }),
      FEW,
    )
  }, 60_000)

  test('what was refused is no number in any score, and a score without a value gets none by less being known', () => {
    fc.assert(
      fc.property(SEED, fc.nat(), (seed, which) => {
        const { standing } = courseOf(id, seed)
        const gone = { outcome: 'refused', readings: {} } as const
        const none = scoreAll({
          ...standing,
          trials: standing.trials.map((trial) => ({ ...trial, ...gone })),
        })
        // How often something was given is a number also where nothing came of it.
        expect(none.filter(({ value, score }) => value !== null && score.unit !== '{count}')).toEqual([])
        const at = which % standing.trials.length
        const less = scoreAll({
          ...standing,
          trials: standing.trials.map((trial, index) => (index === at ? { ...trial, ...gone } : trial)),
        })
        const before = scoreAll(standing)
        expect(less.filter(({ value }, index) => value !== null && before[index]?.value === null)).toEqual([])
      }),
      FEW,
    )
  }, 60_000)

  test('with the hands relabelled the scores change places and nothing else', () => {
    fc.assert(
      fc.property(SEED, (seed) => {
        const { standing } = courseOf(id, seed)
        const expected = scoreAll(standing).map(mirrored)
        expect(scoresEqual(inOrder(scoreAll(relabelled(standing))), inOrder(expected))).toBe(true)
      }),
      FEW,
    )
  }, 60_000)

  test('the order of passes that stand apart has no say', () => {
    fc.assert(
      fc.property(SEED, fc.nat(), (seed, by) => {
        const { standing } = courseOf(id, seed)
        const trials = reordered(standing, APART[id] ?? [], by)
        expect(scoresEqual(scoreAll({ ...standing, trials }), scoreAll(standing))).toBe(true)
      }),
      FEW,
    )
  }, 60_000)
})
