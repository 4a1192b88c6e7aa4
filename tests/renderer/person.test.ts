import { describe, expect, it } from 'vitest'
import { type Arm, type ClientFacts, NOTHING_KNOWN } from '../../protocols/client.ts'
import { absentWords, affectedWords, ageWords, bornLine, bornWords } from '../../renderer/app/person.ts'

const arms = (right: Partial<Arm>, left: Partial<Arm>): ClientFacts => ({
  ...NOTHING_KNOWN,
  arms: { right: { ...NOTHING_KNOWN.arms.right, ...right }, left: { ...NOTHING_KNOWN.arms.left, ...left } },
})

describe('H1, H2: who sits there is told as it is known, and nothing is made up', () => {
  it('an age that isn’t certain is a range', () => {
    expect(ageWords({ from: 67, to: 68 })).toBe('67 to 68 years')
    expect(ageWords({ from: 1, to: 1 })).toBe('1 year')
    expect(ageWords(null)).toBe('Age not known')
  })

  it.each([
    [arms({ status: 'affected' }, { status: 'unaffected' }), 'right'],
    [arms({ status: 'unaffected' }, { status: 'affected' }), 'left'],
    [arms({ status: 'affected' }, { status: 'less_affected' }), 'both (less affected: left)'],
    [arms({ status: 'affected' }, { status: 'affected' }), 'both'],
    [arms({ status: 'unaffected' }, { status: 'unaffected' }), 'none'],
    [arms({ status: 'unaffected' }, { status: 'unknown' }), 'not known'],
    [NOTHING_KNOWN, 'not known'],
  ])('the affected side of case %#', (facts, words) => {
    expect(affectedWords(facts)).toBe(words)
  })

  it('an absent hand or part of one is told with its side', () => {
    expect(absentWords(arms({ status: 'absent' }, { status: 'unaffected' }))).toBe('right')
    expect(absentWords(arms({ status: 'affected' }, { absentPart: 'thumb tip' }))).toBe('left: thumb tip')
    expect(absentWords(arms({ status: 'unaffected' }, { status: 'unaffected' }))).toBe('none')
    expect(absentWords(NOTHING_KNOWN)).toBe('not known')
  })

  it('a birth reads the same in a list as in the profile', () => {
    expect(bornLine('1951-03-09')).toBe(bornWords({ known: 'date', date: '1951-03-09' }))
    expect(bornLine('1951-03')).toBe(bornWords({ known: 'month', year: 1951, month: 3 }))
    expect(bornLine('1951')).toBe(bornWords({ known: 'year', year: 1951 }))
    expect(bornLine('72 (2026-03-01)')).toBe(bornWords({ known: 'told', years: 72, on: '2026-03-01' }))
    expect(bornLine('')).toBe(bornWords({ known: 'no' }))
  })
})
