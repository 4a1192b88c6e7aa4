import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import { simulate } from '../../protocols/rehearsal/simulate.ts'
import type { Recorded } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import { MISSING } from '../../protocols/scoring/reasons.ts'
import { result } from '../../protocols/scoring/result.ts'
import { scoreAll, scoresEqual } from '../../protocols/scoring/scores.ts'
import { folderOf, TESTS } from '../library/folders.ts'
import { factsOf } from './invented.ts'

const ID = '00000000-0000-7000-8000-00000000beef'
const USER = '00000000-0000-7000-8000-00000000cafe'

/** Somebody of whom every test of the library has something to say: some are of an affected arm alone. */
const ARM = factsOf().arms.right
const CLIENT = factsOf({ arms: { right: ARM, left: { ...ARM, status: 'affected' } } })

function readLibrary(name: string) {
  const { protocol } = readProtocol(folderOf(name))
  if (protocol === null) throw new Error(`${name} has problems`)
  return protocol
}

describe.each(TESTS)('%s, given by a made-up examiner', (name) => {
  const protocol = readLibrary(name)
  const runner = runnerFor(protocol)

  const known = new Map<number, readonly Recorded[]>()

  /** Made up once for all that is asked of it. */
  function given(seed: number): readonly Recorded[] {
    const log = known.get(seed) ?? freshly(seed)
    known.set(seed, log)
    return log
  }

  function freshly(seed: number): readonly Recorded[] {
    let ids = 0
    return simulate(protocol, {
      seed,
      facts: CLIENT,
      client: null,
      opened: {
        kind: 'opened',
        protocol: {
          id: protocol.id,
          version: protocol.version,
          hash: 'ab'.repeat(32),
          language: 'en',
          wording: null,
          from: 'library',
        },
        program: '0.1.0',
        rehearsal: false,
        visit: null,
        on: '2026-06-15',
        examiner: { id: USER, name: 'A. Examiner' },
      },
      user: USER,
      kit: [],
      conditions: {},
      nextId: () => `00000000-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`,
      at: (ms) => new Date(Date.UTC(2026, 5, 15, 8) + ms).toISOString(),
    })
  }

  const resultOf = (log: readonly Recorded[]) => {
    const { administration, refused } = runner.replay(log)
    expect(refused).toEqual([])
    const standing = runner.standing(administration)
    return {
      standing,
      scores: scoreAll(standing),
      result: buildResult({
        protocol,
        administration: givenOf(ID, administration),
        standing,
        earlier: [],
        verified: new Map(),
      }),
    }
  }

  test('STD-ADM-9 re-scoring from events, carried as text, equals the score as it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const log = given(seed)
        const first = resultOf(log)
        const again = resultOf(JSON.parse(JSON.stringify(log)))
        expect(scoresEqual(again.scores, first.scores)).toBe(true)
        expect(JSON.stringify(again.result)).toBe(JSON.stringify(first.result))
      }),
      { numRuns: 4 },
    )
  }, 90_000)

  test('STD-ADM-1 STD-ADM-9 a result has its shape, its reasons are known, and no practice trial is in a score', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const { result: built, standing } = resultOf(given(seed))
        expect(result.safeParse(built).error).toBeUndefined()
        const outside = standing.trials
          .filter(({ practice, status }) => practice || status !== 'standing')
          .map(({ id }) => id)
        expect(built.scores.flatMap(({ trials }) => trials).filter((id) => outside.includes(id))).toEqual([])
        const shown = built.scores.filter((one) => one.shown)
        expect(shown.some(({ value }) => value !== null)).toBe(true)
        expect(built.scores.every(({ value, missing }) => (value === null) === (missing !== null))).toBe(true)
        expect(
          built.scores.flatMap(({ missing }) => missing?.code ?? []).filter((code) => !(code in MISSING)),
        ).toEqual([])
      }),
      { numRuns: 4 },
    )
  }, 90_000)

  test('what befell its trials stands in the protocol’s own words, and nothing else does', () => {
    const { standing } = resultOf(given(1))
    const [first] = protocol.happenings
    const reason = protocol.happenings.findLast(({ becomes }) => becomes === 'void')
    if (first === undefined || reason === undefined) throw new Error('no happenings')
    const by = { at: '2026-03-02T10:03:00.000+01:00', by: ID }
    const gone = { happening: reason.name, remark: '', valueSeen: false, cause: 'happening', ...by }
    const trials = standing.trials.map((trial, at) => ({
      ...trial,
      happenings: [first.name],
      void: at === 0 ? gone : null,
    }))
    const built = buildResult({
      protocol,
      administration: givenOf(ID, runner.replay(given(1)).administration),
      standing: { ...standing, trials },
      earlier: [],
      verified: new Map(),
    })
    expect(built.happenings).toEqual(
      [first, reason].map((each) => ({
        name: each.name,
        seen: textOf(protocol, wordingFor(protocol, null), each.seen).trim(),
      })),
    )
    expect(resultOf(given(1)).result.happenings.length).toBeLessThan(protocol.happenings.length)
  })
})
