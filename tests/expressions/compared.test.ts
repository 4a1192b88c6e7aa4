import { describe, expect, test } from 'vitest'
import { comparedNumbers, type Meanings } from '../../protocols/language/expressions/compared.ts'
import { checked } from './worked.ts'

const NOTHING: Meanings = { score: () => null, numbers: () => [] }

const found = (source: string, meanings: Meanings = NOTHING): string[] =>
  comparedNumbers(checked(source), meanings).map(({ step, column, n }) => `${step}.${column} ${n}`)

describe('the numbers that a column is compared with', () => {
  test.each([
    ['last(run.time) < 4.5', ['run.time 4.5']],
    ['3 <= count(grade.grade) && min(run.time) > 20', ['grade.grade 3', 'run.time 20']],
    ["max(run.time) > quantity(2, 'min')", ['run.time 120']],
    ['run.rows.exists(r, r.time > 21)', ['run.time 21']],
    ['last(grade.grade) in [1, 3]', ['grade.grade 1', 'grade.grade 3']],
    ['spread(run.time) <= 5 ? true : mean(run.added) == 0', ['run.time 5', 'run.added 0']],
    ["last(run.outcome) == 'limit'", []],
    ['min(run.time) < max(run.time)', []],
    ['runs == 4', []],
  ])('%s', (source, expected) => {
    expect(found(source)).toEqual(expected)
  })

  test('a score stands for what it rests on, a condition for all that it may be', () => {
    const meanings: Meanings = {
      score: (name) => (name === 'points' ? checked('sum(grade.grade)') : null),
      numbers: (name) => (name === 'fill' ? [1, 2] : []),
    }
    expect(found('points > 7', meanings)).toEqual(['grade.grade 7'])
    expect(found('last(run.time) >= fill', meanings)).toEqual(['run.time 60', 'run.time 120'])
  })
})
