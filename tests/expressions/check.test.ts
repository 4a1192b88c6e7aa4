import { describe, expect, test } from 'vitest'
import { checked, pointed, problemsOf } from './worked.ts'

describe('units are checked before anything is evaluated', () => {
  test.each([
    ['first(run.time) + count(run.time)', 's', '{count}'],
    ['force + mass', 'kgf', 'kg'],
    ['blocks + points', '{count}', '{score}'],
    ['first(run.time) < blocks', 's', '{count}'],
    ['steady ? force : mass', 'kgf', 'kg'],
    ['min(force, mass)', 'kg', 'kgf'],
    ['[force, mass]', 'kg', 'kgf'],
  ])('STD-UNIT-2 %s is refused', (source, one, other) => {
    const [problem] = problemsOf(source)
    expect(problem?.code).toBe('unit_mismatch')
    expect(problem?.message).toContain(one)
    expect(problem?.message).toContain(other)
  })

  test.each([
    ['16 / first(run.time)', '/s'],
    ['size(run.time) * first(run.time)', '{count}.s'],
    ['first(run.time) * first(run.time)', 's.s'],
    ["quantity(16, '{peg}') / first(run.time)", '{peg}/s'],
    ['rate[dominant] / rate[nondominant]', '1'],
    ['5 * first(run.time)', 's'],
    ['first(run.time) + 5', 's'],
    ['5 + first(run.time)', 's'],
    ['first(run.time) + fill', 's'],
    ['count(run.time)', '{count}'],
    ["in_unit(pull, 'kgf')", 'kgf'],
    ['mean(rate)', '{count}'],
    ['runs * 2', null],
  ])('%s has unit %s', (source, unit) => {
    expect(checked(source).type).toEqual({ is: 'number', unit })
  })

  test('a result is brought to the unit that its place asks for', () => {
    expect(checked('fill', { is: 'number', unit: 's' }).type).toEqual({ is: 'number', unit: 's' })
    expect(checked('15', { is: 'number', unit: 's' }).type).toEqual({ is: 'number', unit: 's' })
    expect(checked('sum(run.time) / count(run.time)', { is: 'number', unit: 's' }).type).toEqual({
      is: 'number',
      unit: 's',
    })
    expect(pointed('force', { is: 'number', unit: 's' })).toEqual([['unit_mismatch', 'force']])
    expect(pointed('points', { is: 'number', unit: '{count}' })).toEqual([['unit_mismatch', 'points']])
    expect(pointed('fill', { is: 'number', unit: null })).toEqual([['unit_mismatch', 'fill']])
    expect(pointed('count(run.time) + 1', { is: 'number', unit: null })).toEqual([])
    expect(pointed('rate[dominant] / rate[nondominant]', { is: 'number', unit: null })).toEqual([])
    expect(pointed('force', { is: 'bool' })).toEqual([['wrong_type', 'force']])
  })
})

describe('a problem points at its very characters and says what to do', () => {
  test.each([
    ['run.tme', 'unknown_field', 'tme', 'time'],
    ['runn.time', 'unknown_name', 'runn', 'run'],
    ['men(run.time)', 'unknown_function', 'men', 'mean'],
    ['run.time.means()', 'unknown_function', 'means()', 'mean'],
    ["rate['rihgt']", 'unknown_field', "'rihgt'", 'right'],
    ['rate.lef', 'unknown_field', 'lef', 'left'],
    ["first(run.outcome) == 'refusd'", 'never_equal', "'refusd'", 'can have'],
    ["quantity(2, 'mins')", 'unit_unknown', "'mins'", 'min'],
    ["in_unit(first(run.time), 'kgf')", 'unit_mismatch', 'first(run.time)', 'same kind'],
    ["in_unit(runs, 's')", 'wrong_type', 'runs', 'quantity'],
    ["quantity(force, 's')", 'unit_mismatch', 'force', 'in_unit'],
    ["task.id + 'x'", 'wrong_type', 'task.id', 'number'],
    ['run.time + 1', 'wrong_type', 'run.time', 'mean'],
    ["task.id < 'x'", 'wrong_type', "task.id < 'x'", '=='],
    ["task.id.matches('a+')", 'not_supported', "matches('a+')", 'startsWith'],
    ['last(run.time, 0)', 'wrong_arguments', '0', '3'],
    ['lowest(run.time)', 'wrong_arguments', 'lowest(run.time)', 'lowest(run.time, 3)'],
    ['trimmed(run.time, 0.5)', 'wrong_arguments', '0.5', 'trimmed'],
    ['steady && runs', 'wrong_type', 'runs', 'Compare'],
    ['runs ? 1 : 2', 'wrong_type', 'runs', 'Compare'],
    ['run.rows.filter(r, r.time)', 'wrong_type', 'r.time', 'Compare'],
    ['has(runs)', 'wrong_arguments', 'has(runs)', 'has('],
    ["runs == 'a'", 'wrong_type', "runs == 'a'", 'one kind'],
    ['task.id[0]', 'wrong_type', 'task.id', 'brackets'],
    ['1u', 'not_supported', '1u', 'plain number'],
    ['9007199254740993', 'not_supported', '9007199254740993', '2^53'],
    ["{'a': 1, 'a': 2}", 'wrong_arguments', "'a'", 'away'],
  ])('%s: %s at %s', (source, code, at, mend) => {
    const problems = problemsOf(source)
    expect(problems.map((one) => [one.code, source.slice(one.start, one.end)])).toEqual([[code, at]])
    expect(problems[0]?.mend).toContain(mend)
    expect(problems[0]?.message).toMatch(/\.$/)
  })

  test.each([
    ['an end too early', '1 +', 'syntax', 3],
    ['nothing at all', '', 'syntax', 0],
    ['an open parenthesis', 'first(run.time', 'syntax', 14],
    ['an open text', "'abc", 'syntax', 0],
    ['a reserved word', 'void', 'syntax', 0],
    ['another reserved word', 'loop == 1', 'syntax', 0],
    ['a number beyond doubles', '1e999', 'syntax', 0],
    ['thousands of terms', `1${'+1'.repeat(3000)}`, 'too_large', 0],
    ['hundreds of parentheses', '('.repeat(200), 'too_large', 60],
  ])('%s cannot be read', (_what, source, code, start) => {
    const [problem] = problemsOf(source)
    expect(problem?.code).toBe(code)
    expect(problem?.start).toBe(start)
  })

  test('one mistake does not hide the next', () => {
    expect(pointed('tme < 5 && men(run.time) > 3')).toEqual([
      ['unknown_name', 'tme'],
      ['unknown_function', 'men'],
    ])
  })
})

test('an expression says which names it reads, without those that it binds itself', () => {
  expect(
    [...checked("run.rows.filter(r, r.outcome == 'done').size() < runs && steady").reads].sort(),
  ).toEqual(['run', 'runs', 'steady'])
})

test('names that every object has are not names of the language', () => {
  for (const name of ['constructor', 'toString', 'hasOwnProperty', 'valueOf'])
    expect(pointed(`${name} == 1`)).toEqual([['unknown_name', name]])
  expect(pointed('task.constructor')).toEqual([['unknown_field', 'constructor']])
  expect(pointed('constructor(1)')).toEqual([['unknown_function', 'constructor']])
})
