import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { fileOf, TESTS } from './folders.ts'
import { ruleRows, treeOf, unmet } from './rule-table.ts'

const here = new URL('.', import.meta.url)

test('every library test has a table of its rules and traps, and every table a test', () => {
  const tables = readdirSync(here).filter((name) => name.endsWith('.rules.md'))
  expect(tables.sort()).toEqual(TESTS.map((name) => `${name}.rules.md`))
})

describe.each(TESTS)('%s', (name) => {
  const rows = ruleRows(readFileSync(new URL(`${name}.rules.md`, here), 'utf8'))

  const tree = treeOf(fileOf(name, 'protocol.yaml'))

  test('the table of rules is not empty', () => expect(rows.length).toBeGreaterThan(40))

  test.each(rows)('line $line: $rule', (row) => {
    expect(unmet(row, tree)).toBeNull()
  })
})

describe('a row of a rule table', () => {
  const tree = treeOf(
    'steps:\n  - repeat: round\n    times: 3\n    steps:\n      - { timed: run, limit: 60 s }\n',
  )
  const check = (met: string) =>
    ruleRows(`| rule | met at |\n|---|---|\n| a rule | ${met} |`).map((row) => unmet(row, tree))

  test('holds where its words are found, at any depth of the steps', () => {
    expect(check('steps.run.limit ~ 60 s')).toEqual([null])
    expect(check('steps.run.range ~ (absent)')).toEqual([null])
    expect(check('steps.run.limit ~ (not) 300 s')).toEqual([null])
  })

  test('fails where it points nowhere, or its words are missing, or what must be absent is there', () => {
    expect(check('steps.walk.limit')).toEqual(['steps.walk.limit points nowhere'])
    expect(check('steps.run.limit ~ 300 s')).toEqual([`steps.run.limit doesn't say "300 s"`])
    expect(check('steps.run.limit ~ (absent)')).toEqual(['steps.run.limit is there'])
    expect(check('steps.run.limit ~ (not) 60 s')).toEqual(['steps.run.limit says "60 s"'])
  })
})
