import { describe, expect, test } from 'vitest'
import { arm, facts, Giving, libraryProtocol, madeProtocol } from './giving.ts'

const PROTOCOL = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { position: seated }
      - { timed: try_out, practice: true, start: { said: go }, stop: { seen: Done. } }
      - for-each: part
        in: parts
        steps:
          - repeat: attempt
            times: 2
            steps:
              - { timed: run, start: { said: go }, stop: { seen: Done. }, limit: 30 s, counts-as: { unable: over 30 s } }
`,
  'lists: { parts: [{ id: near }, { id: far }] }\nhappenings: { pain: { seen: Pain., then: stop } }',
)

const toRun = () => new Giving(PROTOCOL).begin().toTrial().time(9)
const close = (giving: Giving, what: string, outcome: string, place = giving.view().step?.place ?? {}) =>
  giving.take({ kind: 'closed', what, place, outcome, reason: 'So it was' } as never)

describe('closed without a result', () => {
  test('a trial: the rest goes on', () => {
    const giving = toRun()
    expect(close(giving, 'trial', 'refused')).toBeNull()
    expect(giving.rows('run')).toEqual(['right near 1 refused'])
    expect(giving.where()).toBe('run at right, near, 2: waiting')
  })

  test('a running trial as tried, unable: no time, but what the file counts it as', () => {
    const giving = toRun().start()
    expect(close(giving, 'trial', 'unable')).toBeNull()
    expect(giving.rows('run')).toEqual(['right near 1 unable time ≥30'])
  })

  test('an item: what was due in it gets rows, the next item comes', () => {
    const giving = toRun().time(8)
    expect(close(giving, 'part', 'not_allowed')).toBeNull()
    expect(giving.rows('run')).toEqual(['right near 1 done time 8', 'right near 2 not_allowed'])
    expect(giving.where()).toBe('run at right, far, 1: waiting')
  })

  test('a hand: all that was due with it', () => {
    const giving = toRun()
    expect(close(giving, 'hand', 'absent', { hand: 'right' })).toBeNull()
    expect(giving.rows('run')).toEqual([
      'right near 1 absent',
      'right near 2 absent',
      'right far 1 absent',
      'right far 2 absent',
    ])
    expect(giving.where()).toBe('seated at left: waiting')
    expect(
      giving
        .view()
        .trials.slice(1)
        .map(({ remark }) => remark),
    ).toEqual(Array(4).fill('So it was'))
  })

  test('the whole test, from any step', () => {
    const giving = toRun().time(8)
    expect(close(giving, 'test', 'not_given')).toBeNull()
    expect(giving.rows('run').length).toBe(8)
    expect(
      giving
        .rows('run')
        .slice(1)
        .every((row) => row.endsWith('not_given')),
    ).toBe(true)
    expect(giving.where()).toBe('end')
  })

  test('five outcomes, five different rows, and none of them a zero', () => {
    const outcomes = ['unable', 'refused', 'not_allowed', 'absent', 'not_given']
    const protocol = madeProtocol(
      '  - repeat: round\n    times: 5\n    steps:\n      - { measured: squeeze, unit: kgf, range: [0, 100] }',
    )
    const giving = new Giving(protocol).begin()
    for (const outcome of outcomes) expect(close(giving, 'trial', outcome)).toBeNull()
    const { trials } = giving.view()
    expect(trials.map(({ outcome }) => outcome)).toEqual(outcomes)
    expect(trials.every(({ readings }) => Object.keys(readings).length === 0)).toBe(true)
  })

  test('not where there is no such thing to close', () => {
    const giving = new Giving(PROTOCOL).begin()
    expect(close(giving, 'trial', 'unable')).toBe('no_trial')
    expect(close(giving, 'part', 'unable')).toBe('not_now')
    expect(close(giving, 'hand', 'unable', { hand: 'left' })).toBe('wrong_place')
    expect(giving.rows('run')).toEqual([])
  })

  test('a hand that is closed stays closed in later rounds', () => {
    const giving = new Giving(libraryProtocol('grip_strength')).begin().toTrial()
    while (giving.view().step?.name !== 'squeeze') giving.measure(20).toTrial()
    const first = String(giving.view().step?.place.hand)
    expect(close(giving, 'hand', 'refused')).toBeNull()
    giving.toTrial()
    while (giving.where() !== 'end') giving.measure(20).toTrial()
    const rows = giving.view().trials.filter(({ step }) => step === 'squeeze')
    expect(rows.filter(({ place }) => place.hand === first).map(({ outcome }) => outcome)).toEqual([
      'refused',
      'refused',
      'refused',
    ])
    expect(rows.filter(({ place }) => place.hand !== first).map(({ outcome }) => outcome)).toEqual([
      'done',
      'done',
      'done',
    ])
  })
})

describe('an absent hand', () => {
  const known = facts({ arms: { right: arm('absent'), left: arm('unaffected') } })

  test('is left out, with a row for everything that was due', () => {
    const giving = new Giving(PROTOCOL).begin(known)
    expect(giving.where()).toBe('seated at left: waiting')
    expect(giving.rows('run')).toEqual([
      'right near 1 absent',
      'right near 2 absent',
      'right far 1 absent',
      'right far 2 absent',
    ])
    expect(giving.view().firstHand).toEqual({ hand: 'left', rule: 'only-hand' })
    expect(
      giving.view().trials.every(({ id }, at, all) => all.findIndex((each) => each.id === id) === at),
    ).toBe(true)
  })

  test('has its rows once, also where the test ends before the hands have an order', () => {
    const protocol = madeProtocol(`
  - { position: seated }
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { measured: squeeze, unit: kgf, range: [0, 100] }
`)
    const giving = new Giving(protocol).begin(known)
    expect(close(giving, 'test', 'refused')).toBeNull()
    expect(giving.rows('squeeze')).toEqual(['right absent', 'left refused'])
  })

  test('on both sides leaves nothing to give', () => {
    const giving = new Giving(PROTOCOL).begin(facts({ arms: { right: arm('absent'), left: arm('absent') } }))
    expect(giving.where()).toBe('end')
    expect(giving.rows('run').length).toBe(8)
  })
})

const settle = (giving: Giving, ends: string) =>
  giving.take({ kind: 'settled', ends, reason: 'Pain in the thumb', pain: 7, done: 'Rested' } as never)

describe('a stop for the client comes first, the reason later', () => {
  test('the clock ends at once at any step, and nothing else can be done before it is settled', () => {
    const giving = toRun().start()
    const stamp = giving.stamp(4000)
    giving.do({ kind: 'halted', stamp })
    expect(giving.view().phase).toBe('halted')
    expect(giving.view().trials.at(-1)).toMatchObject({
      status: 'running',
      stamps: [stamp.at - 4000, stamp.at],
    })
    expect(giving.tryPress('stopped')).toBe('not_in_phase')
    expect(giving.take({ kind: 'resumed' })).toBe('not_in_phase')
    expect(settle(giving, 'test')).toBeNull()
    expect(giving.view().stops).toMatchObject([
      { ends: 'test', reason: 'Pain in the thumb', pain: 7, done: 'Rested', by: 'Ida' },
    ])
  })

  test('ends nothing: the running trial is void and comes again', () => {
    const giving = toRun().start().do({ kind: 'halted', stamp: null })
    settle(giving, 'nothing')
    expect(giving.where()).toBe('run at right, near, 1: waiting')
    expect(giving.view().trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'halted' } })
  })

  test('ends nothing: a trial that was over is still there', () => {
    const giving = toRun().start().press('stopped', 8000).do({ kind: 'halted', stamp: null })
    settle(giving, 'nothing')
    expect(giving.where()).toBe('run at right, near, 1: stopped')
  })

  test('ends the trial: it has a row without a value, and the next one comes', () => {
    const giving = toRun()
      .start()
      .do({ kind: 'halted', stamp: giving0(4000) })
    settle(giving, 'trial')
    expect(giving.rows('run')).toEqual(['right near 1 stopped'])
    expect(giving.where()).toBe('run at right, near, 2: waiting')
  })

  test('ends the hand: the other one comes', () => {
    const giving = toRun().time(8).start().do({ kind: 'halted', stamp: null })
    settle(giving, 'hand')
    expect(giving.rows('run')).toEqual([
      'right near 1 done time 8',
      'right near 2 stopped',
      'right far 1 stopped',
      'right far 2 stopped',
    ])
    expect(giving.where()).toBe('seated at left: waiting')
  })

  test.each(['test', 'visit'])('ends the %s: what was measured stays', (ends) => {
    const giving = toRun().time(8).start().press('stopped', 7000).do({ kind: 'halted', stamp: null })
    settle(giving, ends)
    expect(giving.where()).toBe('end')
    expect(giving.rows('run').slice(0, 3)).toEqual([
      'right near 1 done time 8',
      'right near 2 done time 7',
      'right far 1 stopped',
    ])
    expect(giving.rows('run').length).toBe(8)
  })

  test('settled only after the longest gap: going on is a decision, going on with the other hand a deviation', () => {
    const giving = toRun().start().do({ kind: 'halted', stamp: null })
    giving.wall += 3600
    settle(giving, 'nothing')
    expect(giving.view().phase).toBe('confirming')
    giving.do({ kind: 'confirmed', what: 'resume' })
    giving.do({ kind: 'reopened', afterSeconds: 3600, choice: 'go_on' })
    expect(giving.where()).toBe('run at right, near, 1: waiting')
    expect(giving.view().trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'halted' } })
    giving.do({ kind: 'halted', stamp: null })
    giving.wall += 3600
    settle(giving, 'hand')
    expect(giving.where()).toBe('seated at left: waiting')
    expect(giving.view().deviations.map(({ code }) => code)).toEqual(['went_on_late', 'went_on_late'])
  })

  test('what is not at hand cannot be ended', () => {
    const giving = new Giving(PROTOCOL).begin().do({ kind: 'halted', stamp: null })
    expect(settle(giving, 'trial')).toBe('no_trial')
    const alone = new Giving(
      madeProtocol('  - { timed: run, start: { said: go }, stop: { seen: Done. } }'),
    ).begin()
    alone.do({ kind: 'halted', stamp: null })
    expect(settle(alone, 'hand')).toBe('no_hand')
    expect(alone.view().phase).toBe('halted')
  })

  test('a happening that the file stops for halts like the key does', () => {
    const giving = toRun().start()
    giving.do(giving.body('happened', { happening: 'pain', stamp: giving.stamp() }))
    expect(giving.view()).toMatchObject({ phase: 'halted', because: 'pain' })
    expect(giving.view().trials.at(-1)?.happenings).toEqual(['pain'])
  })

  test('a restart while it waits to be settled changes nothing about that', () => {
    const giving = toRun()
      .start()
      .do({ kind: 'halted', stamp: null })
      .do({ kind: 'interrupted', cause: 'restart' })
    expect(giving.view().phase).toBe('halted')
    settle(giving, 'nothing')
    expect(giving.where()).toBe('run at right, near, 1: waiting')
  })
})

const giving0 = (at: number) => ({ at: 20_000 + at, clock: 'page-1', input: 'key', late: 1 }) as const

describe('the script is left', () => {
  test('with a reason, as a deviation, with a row for a trial', () => {
    const giving = toRun()
    expect(giving.take(giving.body('skipped', { reason: 'No time' }))).toBeNull()
    expect(giving.rows('run')).toEqual(['right near 1 skipped'])
    expect(giving.view().deviations).toMatchObject([
      { code: 'skipped', what: 'run', reason: 'No time', norms: 'caution' },
    ])
  })

  test('at a step that is no trial', () => {
    const giving = new Giving(PROTOCOL).begin()
    giving.do(giving.body('skipped', { reason: 'Sat already' }))
    expect(giving.where()).toBe('try_out at right: waiting')
    expect(giving.view().trials).toEqual([])
  })

  test('a practice trial that is closed or skipped is no row', () => {
    const giving = new Giving(PROTOCOL).begin().toTrial()
    expect(close(giving, 'trial', 'refused')).toBeNull()
    expect(giving.view().trials).toEqual([])
    expect(giving.where()).toBe('run at right, near, 1: waiting')
  })
})
