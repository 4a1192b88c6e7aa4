import { describe, expect, test } from 'vitest'
import { arm, facts, Giving, madeProtocol, uuid } from './giving.ts'

const PROTOCOL = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { measured: squeeze, unit: kgf, range: [0, 100] }
      - { rule: weak, when: "last(squeeze.value) < 5", note: Very weak. }
`,
  'accommodations: { seat: Another firm seat }',
)
const begun = () => new Giving(PROTOCOL).begin()

const correct = (giving: Giving, change: object = {}) =>
  giving.take({
    kind: 'corrected',
    trial: giving.view().trials[0]?.id ?? uuid(1),
    column: 'value',
    value: 3,
    reason: 'Typed 30 for 3',
    ...change,
  } as never)

describe('a mistyped value', () => {
  test('is put right with a reason; the first entry stays', () => {
    const giving = begun().measure(30)
    expect(correct(giving)).toBeNull()
    expect(correct(giving, { value: 3.5, reason: 'Read again' })).toBeNull()
    expect(giving.view().trials[0]?.readings.value).toEqual({
      value: 3.5,
      unit: 'kgf',
      over: false,
      typed: true,
      confirmed: false,
      corrected: { first: 30, reason: 'Read again' },
    })
    expect(giving.view().corrections).toMatchObject([
      { code: 'value', first: '30', now: '3', reason: 'Typed 30 for 3', by: 'Ida' },
      { code: 'value', first: '3', now: '3.5' },
    ])
  })

  test('never re-routes: the rule that would have judged otherwise is named', () => {
    const giving = begun().measure(30)
    const where = giving.where()
    correct(giving)
    expect(giving.where()).toBe(where)
    expect(giving.view().wouldDiffer).toEqual([{ rule: 'weak', place: { hand: 'right' } }])
    correct(giving, { value: 20 })
    expect(giving.view().wouldDiffer).toEqual([])
  })

  test('later trials have no say in what a rule would have said then', () => {
    const giving = begun().measure(3).measure(30)
    correct(giving, { value: 4 })
    expect(giving.view().wouldDiffer).toEqual([])
  })

  test('can still be put right after the end', () => {
    const giving = begun().measure(30).measure(20).do({ kind: 'finished' })
    expect(correct(giving)).toBeNull()
    expect(giving.view()).toMatchObject({ phase: 'finished', wouldDiffer: [{ rule: 'weak' }] })
  })

  test('STD-ADM-12 is asked for again outside the plausible range, and then marked as confirmed', () => {
    const giving = begun().measure(30)
    const confirmed = () => giving.view().trials[0]?.readings.value?.confirmed
    expect(correct(giving, { value: 300 })).toBe('out_of_range')
    expect(correct(giving, { value: 300, confirmed: false })).toBe('out_of_range')
    expect(giving.view().corrections).toEqual([])
    expect(correct(giving, { value: 300, confirmed: true })).toBeNull()
    expect([giving.rows('squeeze'), confirmed()]).toEqual([['right done value 300'], true])
    expect(correct(giving, { value: 31, confirmed: true })).toBeNull()
    expect([giving.rows('squeeze'), confirmed()]).toEqual([['right done value 31'], false])
  })

  test('is refused where there is no such value', () => {
    const giving = begun().measure(30)
    expect(correct(giving, { trial: uuid(77_000) })).toBe('no_such_trial')
    expect(correct(giving, { column: 'time' })).toBe('no_such_column')
    expect(correct(giving, { value: 'three' })).toBe('wrong_type')
    giving.do({ kind: 'closed', what: 'trial', place: { hand: 'left' }, outcome: 'unable', reason: '' })
    expect(correct(giving, { trial: giving.view().trials[1]?.id })).toBe('not_correctable')
  })
})

describe('the wrong hand', () => {
  test('relabels what was given and goes on with the other one; the order is a deviation', () => {
    const giving = begun().measure(30)
    expect(giving.where()).toBe('squeeze at left: waiting')
    giving.do({ kind: 'relabelled', reason: 'Began with the left one' })
    expect(giving.rows('squeeze')).toEqual(['left done value 30'])
    expect(giving.where()).toBe('squeeze at right: waiting')
    giving.measure(25)
    expect(giving.rows('squeeze')).toEqual(['left done value 30', 'right done value 25'])
    expect(giving.where()).toBe('end')
    expect(giving.view()).toMatchObject({
      firstHand: { hand: 'left' },
      deviations: [{ code: 'hands_relabelled', norms: 'caution' }],
      corrections: [{ code: 'hands' }],
    })
  })

  test('cannot be where there is but one', () => {
    const giving = new Giving(PROTOCOL).begin(
      facts({ arms: { right: arm('absent'), left: arm('unaffected') } }),
    )
    expect(giving.take({ kind: 'relabelled', reason: 'Mistake' })).toBe('only_one_hand')
  })
})

test('the wrong examiner or date', () => {
  const giving = begun().measure(30)
  const put = (examiner: { id: string; name: string } | null, on: string | null) =>
    giving.take({ kind: 'reattributed', examiner, on, reason: 'Logged in as another' })
  expect(put(null, null)).toBe('nothing_changed')
  expect(put({ id: uuid(950), name: 'Olu' }, '2026-03-01')).toBeNull()
  expect(giving.view()).toMatchObject({
    examiner: 'Olu',
    on: '2026-03-01',
    corrections: [
      { code: 'examiner', first: 'Ida', now: 'Olu' },
      { code: 'date', first: '2026-03-02', now: '2026-03-01' },
    ],
  })
})

test('the wrong client: it is assigned to another with a reason', () => {
  const giving = begun().measure(30)
  const assign = (reason: string | null) =>
    giving.take({ kind: 'assigned', client: uuid(950), facts: facts({ sex: 'M' }), reason })
  expect(assign(null)).toBe('reason_missing')
  expect(assign('Namesake')).toBeNull()
  expect(giving.view()).toMatchObject({
    client: uuid(950),
    facts: { sex: 'M' },
    corrections: [{ code: 'client', first: uuid(901), now: uuid(950), reason: 'Namesake' }],
  })
})

describe('what differs for the client', () => {
  test('an accommodation of the protocol keeps norms, anything else withholds them', () => {
    const giving = begun()
    const accommodate = (accommodation: string | null) =>
      giving.take({ kind: 'accommodated', accommodation, what: 'Wheelchair', reason: 'Cannot transfer' })
    expect(accommodate('lamp')).toBe('no_such_accommodation')
    expect(accommodate('seat')).toBeNull()
    expect(accommodate(null)).toBeNull()
    expect(giving.view().deviations).toMatchObject([
      { code: 'accommodation', norms: 'kept' },
      { code: 'modification', norms: 'withheld' },
    ])
  })

  test('deviations and remarks are kept with who and when', () => {
    const giving = begun()
    giving.do({ kind: 'deviated', what: 'Table too high', reason: 'No other', norms: 'withheld' })
    giving.do({ kind: 'remarked', text: 'Cheerful' })
    expect(giving.view()).toMatchObject({
      deviations: [{ code: 'told', what: 'Table too high', norms: 'withheld', by: 'Ida', at: giving.at() }],
      remarks: [{ text: 'Cheerful', by: 'Ida', at: giving.at() }],
    })
  })
})
