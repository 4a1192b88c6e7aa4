import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { resumed, scoreOf } from './resumed.ts'

const PROTOCOL = madeProtocol(
  `
  - repeat: run
    times: 2
    steps:
      - { timed: carry, start: { said: go }, stop: { seen: home }, limit: 60 s, voids: 1 }
      - { rated: quality, of: carry, scale: { 0: None, 1: Part, 2: Full } }
      - { measured: pain, of: quality, unit: "{score}", range: [0, 10] }
      - { ask: eased, of: carry, text: Eased?, options: { yes: "Yes", no: "No" } }
`,
  `
scores:
  - { score: total, title: Total, value: sum(quality.grade), unit: "{score}", better: higher, decimals: 0 }
`,
)

let giving: Giving
beforeEach(() => {
  giving = new Giving(PROTOCOL).begin()
})

const grade = (given: number) =>
  giving.do(giving.body('graded', { grade: given, reason: null })).press('kept')
const answer = (given: string) =>
  giving.do(giving.body('answered', { answer: given, confirmed: false })).press('kept')
const standing = () =>
  giving
    .view()
    .trials.filter(({ status }) => status === 'standing')
    .map(({ step, outcome }) => `${step} ${outcome}`)
const statuses = () => giving.view().trials.map(({ step, status }) => `${step} ${status}`)

describe('several further readings of one trial', () => {
  test('follow it one by one, each a row of its own', () => {
    giving.time(9)
    grade(2)
    giving.measure(3)
    answer('yes')
    expect(standing()).toEqual(['carry done', 'quality done', 'pain done', 'eased done'])
    expect(giving.where()).toBe('carry at 2: waiting')
  })

  test.each([
    ['before it is answered', () => {}],
    ['once it is answered', () => giving.do(giving.body('answered', { answer: 'no', confirmed: false }))],
  ])('are all void with it at the last of them, %s, and given anew', (_when, first) => {
    giving.time(9)
    grade(2)
    giving.measure(3)
    first()
    giving.press('voided')
    expect(standing()).toEqual([])
    expect(statuses().slice(0, 3)).toEqual(['carry void', 'quality void', 'pain void'])
    expect(giving.where()).toBe('carry at 1: waiting')
    giving.time(8)
    grade(1)
    giving.measure(2)
    answer('yes')
    expect(giving.rows('quality')).toEqual(['1 done grade 1'])
    expect(scoreOf(giving, 'total')).toBe(1)
  })

  test('undo of that void gives all of them back', () => {
    giving.time(9)
    grade(2)
    giving.measure(3)
    giving.press('voided').do({ kind: 'undone' })
    expect(standing()).toEqual(['carry done', 'quality done', 'pain done'])
    expect(giving.where()).toBe('eased at 1: waiting')
  })

  test('undo goes back across them, one act at a time', () => {
    giving.time(9)
    grade(2)
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('quality at 1: graded')
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('quality at 1: waiting')
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('carry at 1: stopped')
  })

  test('once the trial may not be repeated any more, each of them has its row', () => {
    giving.time(9).press('voided')
    giving.time(9)
    grade(2)
    giving.measure(3)
    giving.press('voided')
    expect(giving.where()).toBe('carry at 2: waiting')
    expect(standing().toSorted()).toEqual([
      'carry not_given',
      'eased not_given',
      'pain not_given',
      'quality not_given',
    ])
    expect(scoreOf(giving, 'total')).toBeNull()
  })

  test('have the outcome of a trial that has no result, and aren’t asked', () => {
    giving.do({ kind: 'closed', what: 'trial', place: { run: 1 }, outcome: 'refused', reason: '' })
    expect(standing()).toEqual(['carry refused', 'quality refused', 'pain refused', 'eased refused'])
    expect(giving.where()).toBe('carry at 2: waiting')
  })

  test('one of them can be closed by itself: the trial and the others stand', () => {
    giving.time(9)
    giving.do({ kind: 'closed', what: 'trial', place: { run: 1 }, outcome: 'not_given', reason: '' })
    giving.measure(3)
    answer('no')
    expect(standing()).toEqual(['carry done', 'quality not_given', 'pain done', 'eased done'])
  })

  test('a restart in between keeps the trial and what was read, and asks for the rest', () => {
    giving.time(9)
    grade(2)
    const again = resumed(giving)
    expect(again.where()).toBe('pain at 1: waiting')
    expect(again.rows('carry')).toEqual(['1 done time 9'])
    expect(again.rows('quality')).toEqual(['1 done grade 2'])
  })
})
