import { assert, property, shuffledSubarray, array, constantFrom, record, integer } from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import type { SheetCell } from '../../protocols/runner/view.ts'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { ADMINISTRATION, arm, facts, Giving, madeProtocol } from '../runner/giving.ts'
import { rehearsed } from './rehearsed.ts'

const LISTS =
  'lists: { joints: [{ id: wrist, most: 90 }, { id: elbow, most: 160 }, { id: digit, most: 110 }] }'
const SCORES = `
scores:
  - { score: all, title: All, value: sum(bend.value), unit: deg, better: higher, decimals: 0 }
  - { score: last_one, title: Last, value: last(bend.value), unit: deg, better: higher, decimals: 0 }
  - { score: first_two, title: First, value: "sum(first(bend.value, 2))", unit: deg, better: higher, decimals: 0 }
  - { score: eased, title: Ease, value: sum(ease.grade), unit: "{score}", better: higher, decimals: 0 }
`
const STEPS = `
  - { measured: before, unit: "1", range: [0, 9] }
  - for-each: joint
    in: joints
    sheet: true
    steps:
      - for-each: hand
        in: hands
        steps:
          - { measured: bend, unit: deg, range: [-20, 160], decimals: 0, voids: 1 }
      - { rated: ease, scale: { 0: Stiff, 1: Free } }
  - { measured: after, unit: "1", range: [0, 9] }
`
const PAGE = madeProtocol(STEPS, LISTS + SCORES)

const begun = (known = facts()): Giving => new Giving(PAGE).begin(known).measure(1)
const cells = (giving: Giving): readonly SheetCell[] => giving.view().sheet?.cells ?? []
const isBlank = ({ trial }: SheetCell): boolean => trial === null

const give = ({ kind, gives, step, place }: SheetCell, value: number): EventBody =>
  ({
    kind: `${kind}.${gives}`,
    step,
    place,
    ...(kind === 'rated' ? { grade: value, reason: null } : { value, confirmed: false }),
  }) as EventBody

const LEAVE: EventBody = { kind: 'sheet_left', section: 'joint', place: {} }
const close = (
  what: string,
  place: EventBody extends infer _ ? Record<string, string> : never,
): EventBody => ({
  kind: 'closed',
  what,
  place,
  outcome: 'unable',
  reason: '',
})

/** What each cell is given in these tests: told by its place in the protocol's order. */
const valueOf = (all: readonly SheetCell[], cell: SheetCell): number =>
  cell.kind === 'rated' ? all.indexOf(cell) % 2 : 10 + all.indexOf(cell)

function fillIn(giving: Giving, order: readonly number[]): Giving {
  const all = cells(giving)
  for (const index of order) {
    const cell = all[index]
    if (cell !== undefined) giving.do(give(cell, valueOf(all, cell)))
  }
  return giving
}

const ALL = [0, 1, 2, 3, 4, 5, 6, 7, 8]

describe('a sheet', () => {
  test('shows all its cells at once, with what is due on it, in the order of the protocol', () => {
    const giving = begun()
    expect(giving.view().step).toBe(null)
    expect(cells(giving).map(({ step, place }) => [step, ...Object.values(place)].join(' '))).toEqual([
      'bend wrist right',
      'bend wrist left',
      'ease wrist',
      'bend elbow right',
      'bend elbow left',
      'ease elbow',
      'bend digit right',
      'bend digit left',
      'ease digit',
    ])
    expect(cells(giving).every(({ trial, inTurn }) => trial === null && inTurn)).toBe(true)
  })

  test('takes its cells in any order, one event each, and goes on once it is left', () => {
    const giving = fillIn(begun(), [4, 0, 8, 7, 1, 2, 3, 6])
    expect(giving.take(LEAVE)).toBe('cells_open')
    expect(
      cells(giving)
        .filter(isBlank)
        .map(({ step, place }) => [step, place.joint]),
    ).toEqual([['ease', 'elbow']])
    fillIn(giving, [5])
    expect(giving.view().offers.find(({ main }) => main)).toMatchObject({ event: 'sheet_left', open: true })
    giving.do(LEAVE)
    expect(giving.where()).toBe('after: waiting')
    expect(giving.rows('bend')).toEqual([
      'wrist right done value 10',
      'wrist left done value 11',
      'elbow right done value 13',
      'elbow left done value 14',
      'digit right done value 16',
      'digit left done value 17',
    ])
  })

  test('STD-ADM-12: asks again for a value that is hardly plausible, and marks it once it is confirmed', () => {
    const giving = begun()
    const [cell] = cells(giving)
    if (cell === undefined) throw new Error('There is no cell.')
    expect(giving.take(give(cell, 300))).toBe('out_of_range')
    expect(giving.take({ ...give(cell, 30.5) })).toBe('too_many_decimals')
    giving.do({ ...give(cell, 300), confirmed: true } as EventBody)
    expect(giving.view().trials.at(-1)?.readings.value).toMatchObject({
      value: 300,
      confirmed: true,
      typed: true,
    })
  })

  test('lets a value be typed again until the page is left, not one that was put right with a reason', () => {
    const giving = fillIn(begun(), [0])
    const [cell] = cells(giving)
    if (cell === undefined) throw new Error('There is no cell.')
    giving.do(give(cell, 42))
    expect(giving.rows('bend')).toEqual(['wrist right done value 42'])
    const trial = cells(giving)[0]?.trial ?? ''
    giving.do({ kind: 'corrected', trial, column: 'value', value: 43, reason: 'Misread' })
    expect(giving.take(give(cell, 44))).toBe('put_right_already')
    expect(giving.take(close('bend', { joint: 'wrist', hand: 'right' }))).toBe('put_right_already')
    expect(giving.rows('bend')).toEqual(['wrist right done value 43'])
  })

  test('closes one cell, those of a hand, or the rest at once, each with its outcome and none with a zero', () => {
    const giving = fillIn(begun(), [0, 2])
    giving.do(close('bend', { joint: 'wrist', hand: 'left' }))
    giving.do({
      kind: 'closed',
      what: 'hand',
      place: { hand: 'left' },
      outcome: 'not_allowed',
      reason: 'Splint',
    })
    giving.do({ kind: 'closed', what: 'joint', place: {}, outcome: 'not_given', reason: '' })
    expect(giving.rows('bend')).toEqual([
      'wrist right done value 10',
      'wrist left unable',
      'elbow right not_given',
      'elbow left not_allowed',
      'digit right not_given',
      'digit left not_allowed',
    ])
    expect(giving.take(close('joint', {}))).toBe('nothing_open')
    const [score] = scoreAll(giving.runner.standing(giving.do(LEAVE).administration))
    expect(score?.value).toBe(null)
  })

  test('opens a cell again when its trial is void, as often as the step allows', () => {
    const giving = fillIn(begun(), [0])
    const voided = {
      kind: 'voided',
      step: 'bend',
      place: { joint: 'wrist', hand: 'right' },
      stamp: null,
    } as const
    giving.do(voided)
    expect(cells(giving)[0]?.trial).toBe(null)
    expect(giving.view().unexplained).toHaveLength(1)
    fillIn(giving, [0]).do(voided)
    expect(giving.rows('bend')).toEqual(['wrist right not_given'])
    expect(
      giving
        .view()
        .trials.filter(({ status }) => status === 'void')
        .map(({ attempt }) => attempt),
    ).toEqual([1, 2])
  })

  test('a happening voids the trial of its cell and is named as the cause; one that is unknown is refused', () => {
    const slips =
      'happenings: { slipped: { seen: The rule slips., do: Lay it on anew., then: void, key: f } }\n' + LISTS
    const page = madeProtocol(STEPS, slips + SCORES)
    const giving = fillIn(new Giving(page).begin(facts()).measure(1), [0, 1])
    const happened = {
      kind: 'happened',
      step: 'bend',
      place: { joint: 'wrist', hand: 'right' },
      happening: 'slipped',
      stamp: null,
    } as const
    giving.do(happened)
    expect(cells(giving).map(isBlank).slice(0, 2)).toEqual([true, false])
    expect(giving.view().trials.find(({ status }) => status === 'void')?.void).toMatchObject({
      happening: 'slipped',
      cause: 'happening',
    })
    expect(giving.take({ ...happened, happening: 'sneezed' })).not.toBe(null)
  })

  test('leaves out a hand that is absent, and says so in its rows', () => {
    const giving = begun(facts({ arms: { right: arm('absent'), left: arm('unaffected') } }))
    expect(giving.rows('bend').map((row) => row.split(' ').slice(1, 3).join(' '))).toEqual([
      'right absent',
      'right absent',
      'right absent',
    ])
    expect(cells(giving).filter(isBlank)).toHaveLength(6)
  })

  test('a stop for the client’s sake ends the test there: what was measured stays', () => {
    const giving = fillIn(begun(), [3]).do({ kind: 'halted', stamp: giving0() })
    giving.do({ kind: 'settled', ends: 'test', reason: 'Pain', pain: 7, done: '' })
    expect(giving.rows('bend').filter((row) => row.includes('done'))).toEqual(['elbow right done value 13'])
    expect(giving.rows('bend')).toHaveLength(6)
    expect(giving.where()).toBe('end')
  })

  test('a stop that ends nothing, a pause and a restart lead back to the page as it was', () => {
    const giving = fillIn(begun(), [3, 1]).do({ kind: 'halted', stamp: null })
    giving.do({ kind: 'settled', ends: 'nothing', reason: 'Wrong key', pain: null, done: '' })
    giving.do({ kind: 'paused', reason: 'Door' }).do({ kind: 'resumed' })
    giving.do({ kind: 'interrupted', cause: 'restart' }).do({ kind: 'confirmed', what: 'resume' })
    expect(
      cells(giving)
        .filter((cell) => !isBlank(cell))
        .map(({ place }) => place),
    ).toEqual([
      { joint: 'wrist', hand: 'left' },
      { joint: 'elbow', hand: 'right' },
    ])
  })

  test('undo takes back the last cell, also one that was closed with others', () => {
    const giving = fillIn(begun(), [3]).do(close('joint', {})).do({ kind: 'undone' })
    expect(cells(giving).filter(isBlank)).toHaveLength(8)
    giving.do({ kind: 'undone' })
    expect(cells(giving).filter(isBlank)).toHaveLength(9)
    expect(fillIn(giving, ALL).do(LEAVE).do({ kind: 'undone' }).view().sheet?.section).toBe('joint')
  })

  test('refuses what names no cell of it', () => {
    const giving = begun()
    const [cell] = cells(giving)
    if (cell === undefined) throw new Error('There is no cell.')
    expect(giving.take({ ...give(cell, 3), place: { joint: 'wrist' } } as EventBody)).toBe('wrong_place')
    expect(giving.take({ ...give(cell, 3), step: 'after' } as EventBody)).toBe('wrong_step')
    expect(giving.take({ ...LEAVE, section: 'hand' } as EventBody)).toBe('wrong_section')
  })

  test('keeps to an order that the protocol names', () => {
    const ordered = madeProtocol(
      STEPS.replace('sheet: true', 'order: shuffled\n    sheet: true'),
      LISTS + SCORES,
    )
    const giving = new Giving(ordered).begin().measure(1)
    const [first, , , fourth] = cells(giving)
    if (first === undefined || fourth === undefined) throw new Error('There are no cells.')
    expect([first.inTurn, fourth.inTurn]).toEqual([true, false])
    expect(giving.take(give(fourth, 3))).toBe('out_of_turn')
    fillIn(giving, [1, 0, 2]).do(give(fourth, 3))
    expect(giving.view().trials.at(-1)?.place).toEqual(fourth.place)
  })

  test('is rehearsed to the end', () => {
    for (const seed of [1, 2, 3]) expect(rehearsed(PAGE, seed).end).toBe('finished')
  })
})

const giving0 = () => ({ at: 12_000, clock: 'page-1', input: 'key', late: 1 }) as const

const scoresOf = (giving: Giving) =>
  scoreAll(giving.runner.standing(giving.administration)).map(({ score, value }) => [score.name, value])

/** Rows without what tells when they were given. */
const rowsOf = (giving: Giving) =>
  giving
    .view()
    .trials.map(({ step, place, status, outcome, readings }) => [step, place, status, outcome, readings])

const bodyOf = (
  giving: Giving,
  { act, cell: index, value }: { act: string; cell: number; value: number },
): EventBody => {
  const cell = cells(giving)[index]
  if (act === 'undo' || cell === undefined) return { kind: 'undone' }
  if (act === 'give') return give(cell, value)
  if (act === 'close') return close(cell.step, cell.place as Record<string, string>)
  if (act === 'void') return { kind: 'voided', step: cell.step, place: cell.place, stamp: null }
  if (act === 'swap') return { kind: 'relabelled', reason: 'Mixed up' }
  return act === 'rest' ? close('joint', {}) : LEAVE
}
const asBytes = (giving: Giving, administration = giving.administration) =>
  JSON.stringify(giving.runner.view(administration, ADMINISTRATION))

describe('laws of a sheet', () => {
  test('two orders of entry give the same rows, in the same order, and the same scores', () => {
    const usual = fillIn(begun(), ALL).do(LEAVE)
    assert(
      property(shuffledSubarray(ALL, { minLength: 9 }), (order) => {
        const giving = fillIn(begun(), order).do(LEAVE)
        expect(rowsOf(giving)).toEqual(rowsOf(usual))
        expect(scoresOf(giving)).toEqual(scoresOf(usual))
      }),
      { numRuns: 40 },
    )
  })

  const acts = array(
    record({
      act: constantFrom('give', 'give', 'close', 'void', 'undo', 'rest', 'leave', 'swap'),
      cell: integer({ min: 0, max: 8 }),
      value: integer({ min: -30, max: 170 }),
    }),
    { minLength: 3, maxLength: 30 },
  )
  test('replay is the same as live, a refused act changes nothing, and undo is never having done it', () => {
    assert(
      property(acts, (drawn) => {
        const giving = begun()
        const changed: string[] = []
        for (const each of drawn) {
          const before = asBytes(giving)
          const body = bodyOf(giving, each)
          const was = giving.administration
          const isTaken = giving.take(body) === null
          const { administration: after } = giving
          if (isTaken && body.kind !== 'undone') {
            giving.do({ kind: 'undone' })
            giving.log.pop()
          }
          if (body.kind !== 'undone' && asBytes(giving) !== before)
            changed.push(`${body.kind} ${was.past?.count}`)
          giving.administration = after
        }
        expect(changed).toEqual([])
        const { administration, refused } = runnerFor(PAGE).replay(giving.log)
        expect(refused).toEqual([])
        expect(asBytes(giving, administration)).toBe(asBytes(giving))
      }),
      { numRuns: 40 },
    )
  })
})
