import { describe, expect, it } from 'vitest'
import {
  CHANGE_CAUTIONS,
  CHANGE_SENTENCES,
  MISSING,
  NORM_CAUTIONS,
  OTHER_HAND,
} from '../../protocols/scoring/reasons.ts'
import { lineCount } from '../../renderer/screens/result/record-text.tsx'
import { type ReasonGroup, tellReason } from '../../renderer/screens/result/tell.ts'
import { direction } from '../../renderer/screens/result/tell-change.ts'
import { tellRefusal } from '../../renderer/steps/refusal.tsx'
import {
  tellNumber,
  tellReadings,
  tellSide,
  tellTime,
  tellUnit,
  tellValue,
} from '../../renderer/steps/tell.ts'
import { secondsFrom } from '../../renderer/steps/timed/typed-time.tsx'
import { hasWords } from '../../renderer/words/index.ts'
import { Giving, libraryProtocol } from '../runner/giving.ts'

const GROUPS = {
  missing: MISSING,
  norm: NORM_CAUTIONS,
  other_hand: OTHER_HAND,
  caution: CHANGE_CAUTIONS,
  sentence: CHANGE_SENTENCES,
} satisfies Record<ReasonGroup, Readonly<Record<string, readonly string[]>>>

describe('Values in words', () => {
  it('are rounded once, at the end, ties away from zero, as the report rounds them', () => {
    expect([1.005, 2.345, 19.95, -0.05].map((value) => tellNumber(value, 2))).toEqual([
      '1.01',
      '2.35',
      '19.95',
      '−0.05',
    ])
    expect([20.25, 20.35, 0.05].map((value) => tellNumber(value, 1))).toEqual(['20.3', '20.4', '0.1'])
  })

  it('have no sign where nothing is left of them', () => {
    expect(tellNumber(-0.04, 1)).toBe('0.0')
  })

  it('are never a number that is none', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, null])
      expect(tellNumber(value, 1)).toBe('no value')
  })

  it('carry their unit as people write it, and a bound as a bound', () => {
    expect(tellValue(60, 0, 's', true)).toBe('at least 60 s')
    expect(tellValue(61, 0, '{block}')).toBe('61 blocks')
    expect(tellValue(0.85, 2, '1')).toBe('0.85')
    expect(tellUnit('[never_heard]')).toBe('never heard')
  })

  it('tell wall time with its offset, and the hand whatever its loop is called', () => {
    expect(tellTime('2026-03-02T09:05:07.123+01:00')).toBe('09:05 (UTC+01:00)')
    expect(tellSide({ tried_hand: 'left' })).toBe('Left hand')
    expect(tellSide({ attempt: 2 })).toBe('')
  })

  it('call a difference none where none would be shown', () => {
    expect([0.04, -0.04, 0.05, -3, null].map((value) => direction(value, 1))).toEqual([
      'same',
      'same',
      'more',
      'less',
      'open',
    ])
  })

  it('mark a time that was typed by hand', () => {
    const giving = new Giving(libraryProtocol('nine_hole_peg')).begin().toTrial()
    giving.do(giving.body('typed', { seconds: 19.53, confirmed: false })).press('kept')
    const [trial] = giving.view().trials
    expect(trial && tellReadings(trial).map(({ words }) => words)).toEqual(['19.53 s (typed)'])
  })
})

describe('A time typed from a watch', () => {
  it('takes minutes and seconds in boxes of their own, so that 1.30 is never the other thing', () => {
    expect(secondsFrom('1', '30')).toBe(90)
    expect(secondsFrom('', '90')).toBe(90)
    expect(secondsFrom('', '19,5')).toBe(19.5)
    expect(secondsFrom('2', '')).toBe(120)
  })

  it('says what is wrong instead of guessing', () => {
    for (const [minutes, seconds] of [
      ['', ''],
      ['1', '75'],
      ['1.5', '0'],
      ['', 'soon'],
    ] as const)
      expect(secondsFrom(minutes, seconds)).toHaveProperty('problem')
  })
})

describe('Every code that a result may give', () => {
  it.each(Object.entries(GROUPS))('has words: %s', (group, codes) => {
    for (const [code, details] of Object.entries(codes)) {
      const detail = Object.fromEntries(details.map((name) => [name, 2]))
      expect(hasWords(`result.${group}.${code}`), `${group}.${code}`).toBe(true)
      expect(tellReason(group as ReasonGroup, { code, detail })).not.toMatch(/[{}]|undefined/)
    }
  })

  it('is shown as it is where it is new', () => {
    expect(tellReason('missing', { code: 'never_heard_of', detail: {} })).toContain('never_heard_of')
    expect(tellRefusal({ refused: 'never_heard_of', detail: {} })).toContain('never_heard_of')
  })
})

describe('The text for the record', () => {
  it('counts the lines that would go into the record, not the empty ones at the end', () => {
    expect(lineCount('one\ntwo\n\n')).toBe(2)
  })
})
