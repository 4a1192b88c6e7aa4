/**
 * Nothing is zero by accident: a test that is refused at its first step leaves no score behind in any protocol. A count
 * that has no better side may say how many there were, and that is none.
 */
import { describe, expect, test } from 'vitest'
import { scoreAll } from '../../protocols/scoring/scores.ts'
import { TESTS } from './folders.ts'
import { arms, facts, LogBook } from './log-book.ts'

function refusedAtOnce(name: string): LogBook {
  const book = new LogBook(name)
  const told = book.protocol.conditions.filter(({ setBy }) => setBy === 'clinic' || setBy === 'examiner')
  book.open({
    facts: facts(arms('affected', 'unaffected')),
    conditions: Object.fromEntries(told.map((each) => [each.name, each.usual ?? each.options[0]?.id ?? ''])),
  })
  const { place } = book.here()
  book.act({ kind: 'closed', what: 'test', place, outcome: 'refused', reason: 'not today' })
  return book
}

describe.each(TESTS)('%s', (name) => {
  test('refused at once: no score has a value', () => {
    const { runner, log } = refusedAtOnce(name)
    const scored = scoreAll(runner.standing(runner.replay(log).administration))
    expect(scored.length).toBeGreaterThan(0)
    const valued = scored.filter(({ value }) => value !== null)
    expect(valued.filter(({ score, value }) => score.better !== 'none' || value !== 0)).toEqual([])
  })
})
