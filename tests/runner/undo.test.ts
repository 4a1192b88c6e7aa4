import { describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from './giving.ts'

const PROTOCOL = madeProtocol(
  `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { position: seated }
      - repeat: attempt
        times: 2
        steps:
          - { timed: run, start: { said: go }, stop: { seen: Done. }, limit: 30 s }
`,
)
const begun = () => new Giving(PROTOCOL).begin()
const undo = (giving: Giving) => giving.take({ kind: 'undone' })

describe('undo', () => {
  test('takes back the last act, one after the other', () => {
    const giving = begun().press('set').start().press('stopped', 9000)
    expect(undo(giving)).toBeNull()
    expect(giving.where()).toBe('run at right, 1: running')
    undo(giving)
    expect(giving.where()).toBe('run at right, 1: armed')
    undo(giving)
    undo(giving)
    expect(giving.where()).toBe('seated at right: waiting')
    expect(giving.view().trials).toEqual([])
  })

  test('goes back across sections, with the order that followed by itself', () => {
    const giving = begun().press('set').time(9).time(10)
    expect(giving.where()).toBe('seated at left: waiting')
    undo(giving)
    expect(giving.where()).toBe('run at right, 2: stopped')
    expect(giving.rows('run')).toEqual(['right 1 done time 9'])
    giving.press('kept', 4000)
    expect(giving.where()).toBe('seated at left: waiting')
  })

  test('takes what a clock outside made with the act before it', () => {
    const giving = begun().press('set').start()
    giving.do(giving.body('limit_reached', { at: giving.now + 30_000, clock: giving.clock }))
    undo(giving)
    expect(giving.where()).toBe('run at right, 1: armed')
  })

  test('never takes back that it was opened, assigned, prepared and confirmed', () => {
    const giving = begun()
    expect(undo(giving)).toBe('nothing_to_undo')
    expect(giving.view().offers).toContainEqual({ event: 'undone', open: false, main: false })
    giving
      .press('set')
      .do({ kind: 'interrupted', cause: 'restart' })
      .do({ kind: 'confirmed', what: 'resume' })
    expect(giving.view().offers).toContainEqual({ event: 'undone', open: true, main: false })
    undo(giving)
    expect(giving.where()).toBe('seated at right: waiting')
    expect(undo(giving)).toBe('nothing_to_undo')
  })

  test('a void, a closing and a stop are acts like others', () => {
    const giving = begun().press('set').start().press('voided')
    undo(giving)
    expect(giving.where()).toBe('run at right, 1: running')
    giving.do({ kind: 'closed', what: 'hand', place: { hand: 'right' }, outcome: 'refused', reason: '' })
    undo(giving)
    expect(giving.where()).toBe('run at right, 1: running')
    giving.do({ kind: 'halted', stamp: null })
    undo(giving)
    expect(giving.where()).toBe('run at right, 1: running')
    giving.press('stopped', 20_000).press('kept')
    expect(giving.rows('run').length).toBe(1)
  })

  test('a deviation and a correction are taken back too', () => {
    const giving = begun().press('set').time(9)
    const [trial] = giving.view().trials
    giving.do({ kind: 'deviated', what: 'Board turned', reason: 'Small table', norms: 'caution' })
    giving.do({ kind: 'corrected', trial: trial?.id ?? '', column: 'time', value: 8, reason: 'Misread' })
    undo(giving)
    expect(giving.view().trials[0]?.readings.time).toMatchObject({ value: 9, corrected: null })
    expect(giving.view().corrections).toEqual([])
    undo(giving)
    expect(giving.view().deviations).toEqual([])
  })

  test('what was noted meanwhile stays', () => {
    const giving = begun().press('set').do({ kind: 'noted', text: 'Tired today' })
    undo(giving)
    expect(giving.where()).toBe('seated at right: waiting')
    expect(giving.view().note).toBe('Tired today')
  })

  test('ends at the end: what was finished is put right by corrections', () => {
    const giving = begun().press('set').time(9).time(9).press('set').time(9).time(9).do({ kind: 'finished' })
    expect(undo(giving)).toBe('nothing_to_undo')
    giving.do({ kind: 'remarked', text: 'Cheerful' })
    expect(undo(giving)).toBeNull()
    expect(giving.view()).toMatchObject({ phase: 'finished', remarks: [] })
  })
})
