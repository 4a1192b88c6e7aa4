import { describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from './giving.ts'

const HAPPENINGS = `happenings:
  helped: { seen: The other hand helps., then: void, key: h }
  dropped: { seen: A peg falls., then: go-on }`

const PROTOCOL = madeProtocol(
  `
  - { timed: run, voids: 2, start: { said: go }, stop: { seen: Done. } }
  - { measured: next, unit: kgf, range: [0, 100] }
`,
  HAPPENINGS,
)

describe('a void trial', () => {
  test('by one key while it runs: the reason is asked for afterwards, the trial comes again', () => {
    const giving = new Giving(PROTOCOL).begin().start().press('voided', 4000)
    expect(giving.where()).toBe('run: waiting')
    const [trial] = giving.view().trials
    expect(trial).toMatchObject({
      status: 'void',
      outcome: null,
      void: { happening: null, valueSeen: false },
    })
    expect(giving.view().unexplained).toEqual([trial?.id])
    expect(giving.view().step?.face).toMatchObject({ attempt: 2, voidsLeft: 1 })
  })

  test('declared once the value was seen is marked so', () => {
    const giving = new Giving(PROTOCOL).begin().start().press('stopped', 9000).press('voided', 3000)
    expect(giving.view().trials[0]).toMatchObject({
      status: 'void',
      readings: { time: { value: 9 } },
      void: { valueSeen: true },
    })
  })

  test('by a happening has its reason already', () => {
    const giving = new Giving(PROTOCOL).begin().start()
    giving.do(giving.body('happened', { happening: 'helped', stamp: giving.stamp() }))
    expect(giving.where()).toBe('run: waiting')
    expect(giving.view().trials[0]?.void).toMatchObject({ happening: 'helped', cause: 'happening' })
    expect(giving.view().unexplained).toEqual([])
  })

  test('is made good as often as the file allows; then the step ends without it', () => {
    const giving = new Giving(PROTOCOL).begin()
    for (const left of [1, 0]) {
      giving.start().press('voided', 3000)
      expect(giving.view().step?.face).toMatchObject({ voidsLeft: left })
    }
    giving.start().press('voided', 3000)
    expect(giving.where()).toBe('next: waiting')
    expect(giving.rows('run')).toEqual(['not_given'])
    expect(
      giving
        .view()
        .trials.filter(({ status }) => status === 'void')
        .map(({ attempt }) => attempt),
    ).toEqual([1, 2, 3])
  })

  test('is not one where no trial is in flight', () => {
    const giving = new Giving(PROTOCOL).begin()
    expect(giving.tryPress('voided')).toBe('not_now')
    giving.arm()
    expect(giving.tryPress('voided')).toBe('not_now')
  })

  test('a happening that does not matter is kept with the trial', () => {
    const giving = new Giving(PROTOCOL).begin().start()
    giving.do(giving.body('happened', { happening: 'dropped', stamp: null }))
    expect(giving.take(giving.body('happened', { happening: 'flew', stamp: null }))).toBe('not_now')
    giving.press('stopped', 9000).press('kept')
    expect(giving.view().trials[0]).toMatchObject({ outcome: 'done', happenings: ['dropped'] })
  })
})

describe('a further reading of a trial', () => {
  const protocol = madeProtocol(
    `
  - repeat: pass
    times: 2
    steps:
      - { timed: carry, voids: 1, start: { said: go }, stop: { seen: Done. }, limit: 30 s }
      - { measured: grade, of: carry, unit: "{score}", range: [0, 3] }
`,
  )
  const carried = () => new Giving(protocol).begin().time(9)

  test('comes after it', () => {
    const giving = carried()
    expect(giving.where()).toBe('grade at 1: waiting')
    giving.measure(2)
    expect(giving.where()).toBe('carry at 2: waiting')
  })

  test('is void and repeated with it', () => {
    const giving = carried().press('voided')
    expect(giving.where()).toBe('carry at 1: waiting')
    expect(giving.view().trials).toMatchObject([{ step: 'carry', status: 'void', void: { valueSeen: true } }])
    expect(giving.view().step?.face).toMatchObject({ attempt: 2, voidsLeft: 0 })
    giving.time(10).measure(3)
    expect(giving.rows('carry')).toEqual(['1 done time 10'])
    expect(giving.rows('grade')).toEqual(['1 done value 3'])
  })

  test('is left out with it when it may not be repeated any more', () => {
    const giving = carried().press('voided').time(10).press('voided')
    expect(giving.where()).toBe('carry at 2: waiting')
    expect(giving.rows('carry')).toEqual(['1 not_given'])
    expect(giving.rows('grade')).toEqual(['1 not_given'])
  })

  test('is not asked where the trial has no result: it has the same outcome', () => {
    const giving = new Giving(protocol).begin()
    giving.do({ kind: 'closed', what: 'trial', place: { pass: 1 }, outcome: 'refused', reason: '' })
    expect(giving.where()).toBe('carry at 2: waiting')
    expect(giving.rows('grade')).toEqual(['1 refused'])
  })

  test('is undone with it', () => {
    const giving = carried().measure(2)
    giving.do({ kind: 'undone' }).do({ kind: 'undone' })
    expect(giving.where()).toBe('grade at 1: waiting')
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('carry at 1: stopped')
    expect(giving.rows('grade')).toEqual([])
  })
})
