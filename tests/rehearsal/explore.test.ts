import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Protocol } from '../../protocols/language/model.ts'
import { type Explored, explore } from '../../protocols/rehearsal/explore.ts'
import { libraryProtocol, madeProtocol, uuid } from '../runner/giving.ts'

const two = (n: number): string => String(Math.floor(n)).padStart(2, '0')
const at = (ms: number): string =>
  `2026-03-02T${two((ms / 3_600_000) % 24)}:${two((ms / 60_000) % 60)}:${two((ms / 1000) % 60)}Z`

function explored(protocol: Protocol, bound: { states?: number; depth?: number } = {}): Explored {
  return explore(protocol, {
    states: 3000,
    depth: 400,
    ...bound,
    user: 'Ida',
    idOf: uuid,
    at,
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
  })
}

/** The shortest way to a step in short: its length and what of it isn't as usual. */
function wayTo({ steps }: Explored, name: string): string | null {
  const way = steps.find(({ step }) => step === name)?.way
  if (!way) return null
  const unusual = way.taken.filter(({ usual }) => !usual).map((one) => `${one.at} ${one.outcome}`)
  return [way.taken.length, ...unusual].join('; ')
}

const run = (more = ''): string => `{ timed: run, start: { said: go }, stop: { seen: home }${more} }`
const SCORE = `
scores:
  - { score: time, title: Time, value: last(run.time), unit: s, better: lower, decimals: 2 }
`

describe('walked by values', () => {
  test('a step behind a rule is reached by a time on the right side of what it is compared with', () => {
    const found = explored(
      madeProtocol(
        `  - ${run()}\n  - { rule: quick, when: last(run.time) < 4.5, end: test }\n  - { ask: why, options: { tired: Tired, pain: Pain } }\n  - { rule: hurts, when: "last(why.answer) == 'pain'", end: test }\n  - { instruct: bye, text: Bye. }`,
        SCORE,
      ),
    )
    expect(found).toMatchObject({ bound: null, deadEnds: [], scoresNever: [], rulesNever: [] })
    expect(wayTo(found, 'why')).toBe('1')
    expect(wayTo(found, 'bye')).toBe('2')
    expect(found.walked.states).toBeGreaterThan(5)
  })

  test('the unit of a comparison is that of the column', () => {
    const found = explored(
      madeProtocol(
        `  - ${run()}\n  - { rule: slow, when: "last(run.time) > quantity(2, 'min')", end: test }\n  - { instruct: bye, text: Bye. }`,
        SCORE,
      ),
    )
    expect(found.rulesNever).toEqual([])
  })

  test('a comparison by way of a score is one of what the score rests on', () => {
    const found = explored(
      madeProtocol(
        `  - ${run()}\n  - { rule: slow, when: time > 77, end: test }\n  - { instruct: bye, text: Bye. }`,
        SCORE,
      ),
    )
    expect(found.rulesNever).toEqual([])
  })

  test('what a condition of the clinic decides is walked both ways', () => {
    const found = explored(
      madeProtocol(
        `  - ${run()}\n  - { rule: short_form, when: "form == 'short'", end: test }\n  - { instruct: bye, text: Bye. }`,
        `conditions: { form: { set-by: clinic, options: { long: Long, short: Short }, usual: short } }${SCORE}`,
      ),
    )
    expect(found.rulesNever).toEqual([])
    expect(found.steps.find(({ step }) => step === 'bye')?.way?.start).toBe('form long')
  })

  test('a step that no value leads to, a rule that never holds and a score without a value are named', () => {
    const found = explored(
      madeProtocol(
        `  - ${run(', limit: 60 s')}\n  - { rule: always, when: "last(run.outcome) != 'stopped'", end: test }\n  - { instruct: bye, text: Bye. }\n  - { timed: again, start: { said: go }, stop: { seen: home } }\n  - { rule: late, when: last(again.time) > 5, note: Late. }`,
        `${SCORE}  - { score: second, title: Second, value: last(again.time), unit: s, better: lower, decimals: 2 }\n`,
      ),
    )
    expect(found.bound).toBeNull()
    expect(found.steps.filter(({ way }) => way === null).map(({ step }) => step)).toEqual(['bye', 'again'])
    expect(found.rulesNever).toEqual(['late'])
    expect(found.scoresNever).toEqual(['second'])
  })

  test('a step that can only be left by its limit is left by it', () => {
    const found = explored(
      madeProtocol(
        `  - ${run(', limit: 60 s')}\n  - { rule: in_time, when: "last(run.outcome) != 'limit'", end: test }\n  - { instruct: comfort, text: Never mind. }`,
        SCORE,
      ),
    )
    expect(wayTo(found, 'comfort')).toBe('1; run limit')
  })

  test('a dead end is told with the way that leads there', () => {
    const found = explored(
      madeProtocol(
        `  - { rated: try_out, practice: true, scale: { 0: None, 1: Some }, allow: { from: "[7]" } }\n  - ${run()}`,
        SCORE,
      ),
    )
    expect(found.deadEnds.length).toBeGreaterThan(0)
    expect(found.deadEnds[0]).toMatchObject({ at: 'try_out', way: { start: 'usual', taken: [] } })
    expect(wayTo(found, 'run')).toBeNull()
  })

  test('the bound is kept and said', () => {
    const protocol = madeProtocol(
      `  - repeat: round\n    times: 2\n    steps:\n      - ${run()}\n  - { rule: slow, when: sum(run.time) > 50, end: test }\n  - { instruct: bye, text: Bye. }`,
      SCORE,
    )
    const few = explored(protocol, { states: 12 })
    expect([few.bound, few.walked.states < 30]).toEqual(['states', true])
    expect(explored(protocol, { depth: 2 }).bound).toBe('depth')
    expect(explored(protocol).bound).toBeNull()
  })

  test('the same walk every time', () => {
    expect(explored(libraryProtocol('nine_hole_peg'))).toEqual(explored(libraryProtocol('nine_hole_peg')))
  })
})

test('of two steps that have to go together, a rule beyond the bound is found on a single path', () => {
  const found = explored(
    madeProtocol(
      `  - repeat: round
    times: 12
    steps:
      - { ask: seen, options: { yes: Seen, no: Not seen } }
      - { ask: felt, options: { yes: Felt, no: Not felt } }
  - { rule: neither, when: "count(seen.rows.filter(r, r.answer == 'no')) == 12 && count(felt.rows.filter(r, r.answer == 'no')) == 12", end: test }
  - ${run()}`,
      SCORE,
    ),
    { states: 60 },
  )
  expect([found.bound, found.rulesNever]).toEqual(['states', []])
})

/** How many states there are where a rule reads four answers in this way. */
const walkedBy = (reads: string): number =>
  explored(
    madeProtocol(
      `  - repeat: round\n    times: 4\n    steps:\n      - { ask: seen, options: { yes: Seen, no: Not seen } }\n  - { rule: unseen, when: ${reads}, end: test }\n  - ${run()}`,
      SCORE,
    ),
  ).walked.states

test('only the last of a step’s rows tells states apart where a rule looks at nothing else', () => {
  const byCount = `"count(seen.rows.filter(r, r.answer == 'no')) > 1"`
  expect(walkedBy(`"last(seen.answer) == 'no'"`) * 4).toBeLessThan(walkedBy(byCount))
})

const LIBRARY = readdirSync(new URL('../../protocols/library', import.meta.url)).filter(
  (name) => !name.includes('.'),
)

describe.each(LIBRARY)('%s', (id) => {
  test('every step is reached, every rule holds, every score has a value, and no path ends in nothing', () => {
    const found = explored(libraryProtocol(id), { states: 400 })
    expect(found.steps.filter(({ way }) => way === null).map(({ step }) => step)).toEqual([])
    expect(found.deadEnds.map(({ at: where }) => where)).toEqual([])
    expect(found.rulesNever).toEqual([])
    expect(found.scoresNever).toEqual([])
  }, 120_000)
})
