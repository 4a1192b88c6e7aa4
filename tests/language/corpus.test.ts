import { describe, expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { casesIn, placeOf } from './corpus.ts'

const faulty = casesIn('faulty')
const sound = casesIn('sound')

describe('STD-FMT-4 STD-FMT-7 each faulty protocol has its problems told at their very place, and no other', () => {
  test('the corpus is there', () => {
    expect(faulty.length).toBeGreaterThanOrEqual(150)
    expect(sound.length).toBeGreaterThanOrEqual(40)
    expect(faulty.filter(({ expected }) => expected.length === 0).map(({ name }) => name)).toEqual([])
  })

  test.each(faulty)('$name', ({ folder, expected }) => {
    const { protocol, diagnostics } = readProtocol(folder)
    expect(diagnostics.map(placeOf).toSorted()).toEqual(expected.map(({ place }) => place).toSorted())
    for (const { place, words } of expected) {
      const told = diagnostics.filter((each) => placeOf(each) === place)
      expect(told.map(({ message, mend }) => `${message} ${mend}`).join(' ')).toContain(words)
    }
    expect(protocol === null).toBe(diagnostics.some(({ severity }) => severity === 'error'))
  })
})

describe('a sound protocol is read without a word', () => {
  test.each(sound)('$name', ({ folder, expected }) => {
    const { protocol, diagnostics } = readProtocol(folder)
    expect(expected).toEqual([])
    expect(diagnostics).toEqual([])
    expect(protocol).not.toBeNull()
  })
})
