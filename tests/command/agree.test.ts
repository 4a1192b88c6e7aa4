import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Agreed } from '../../main/hosts/command/commands/agree.ts'
import reference from '../outside/statistics-reference.json' with { type: 'json' }
import { evenhand, jsonOf } from './evenhand.ts'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenhand-agree-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

function table(...lines: string[]): string {
  const file = join(folder, 'table.csv')
  writeFileSync(file, `${lines.join('\n')}\n`)
  return file
}

const agreed = async (file: string, ...words: string[]): Promise<Agreed> =>
  jsonOf(await evenhand('agree', file, ...words, '--json')) as Agreed

describe('evenhand agree', () => {
  test('STD-INT-7 a table of numbers gives the reference’s ICC, SEM and SDC', async () => {
    const [expected] = reference.intraclass
    const rows = expected?.table.map((row, at) => [`s${at}`, ...row].join(',')) ?? []
    const { numbers, n, raters } = await agreed(table('subject,a,b,c,d', ...rows))
    expect([n, raters]).toEqual([6, ['a', 'b', 'c', 'd']])
    const forms = numbers?.intraclass ?? []
    expect(forms.map(({ form }) => form)).toEqual(['1,1', '2,1', '3,1', '1,k', '2,k', '3,k'])
    forms.forEach(({ value }, at) => expect(value).toBeCloseTo(expected?.value[at] ?? Number.NaN, 10))
    expect(numbers?.errors[0]?.sem).toBeCloseTo(expected?.semAgreement ?? Number.NaN, 10)
    expect(numbers?.errors[0]?.mdc95).toBeCloseTo(2.771807648699381 * (expected?.semAgreement ?? 0), 9)
    expect(numbers?.limits).toHaveLength(6)
  })

  test('in words: each form with its interval, what is error, and the limits of each two raters', async () => {
    const { code, out } = await evenhand(
      'agree',
      table('subject,ann,bo', 'p,9,2', 'q,6,1', 'r,8,4', 's,7,1', 't,10,5', 'u,6,2'),
    )
    expect(code).toBe(0)
    expect(out).toContain('6 subjects, 2 raters')
    expect(out).toMatch(/ICC\(2,1\), absolute agreement: \d\.\d\d \(95 % interval .+\), p/)
    expect(out).toMatch(/SEM for agreement .+: \d\.\d\d; MDC90 .+, MDC95/)
    expect(out).toMatch(/ann less bo: mean difference 5\.17/)
    expect(out).toMatch(/95 % limits of agreement .+; exact intervals/)
    expect(out).not.toMatch(/undefined|NaN|[{}]/)
  })

  test('grades in their order give plain and weighted kappas, also of categories nobody used', async () => {
    const rows = ['none,none', 'part,slow', 'part,part', 'slow,slow', 'slow,part', 'none,none']
    const file = table('who,x,y', ...rows.map((row, at) => `${at},${row}`))
    const { numbers, grades } = await agreed(file, '--categories', 'none,part,slow,full')
    expect(numbers).toBeNull()
    const [pair] = grades?.pairs ?? []
    expect(pair?.same).toBeCloseTo(4 / 6, 12)
    const [plain, linear, quadratic] = pair?.kappas.map(({ value }) => value ?? 0) ?? []
    expect(plain).toBeCloseTo(0.5, 12)
    expect(linear).toBeGreaterThan(plain ?? 1)
    expect(quadratic).toBeGreaterThan(linear ?? 1)
    expect(grades?.together).toBeNull()
  })

  test('grades that are numbers give both, and three raters a kappa together', async () => {
    const file = table('who,x,y,z', 'a,0,0,0', 'b,1,1,2', 'c,2,2,2', 'd,3,2,3')
    const { numbers, grades } = await agreed(file, '--categories', '0,1,2,3')
    expect(numbers?.intraclass[1]?.value).toBeGreaterThan(0.8)
    expect(grades?.pairs).toHaveLength(3)
    expect(grades?.together?.value).toBeGreaterThan(0)
  })

  test('a subject with a gap is left out and named', async () => {
    const { n, dropped } = await agreed(table('who,x,y', 'a,1,2', 'b,,3', 'c,3,4', 'd,5,5'))
    expect([n, dropped]).toEqual([3, ['b']])
  })

  test('each fault of the file is told with its line and column, and nothing is worked out', async () => {
    const file = table('who,x,y', 'a,1,2', 'a,3,4', 'c,"3,5",4', 'd,5')
    const { code, out } = await evenhand('agree', file)
    expect(code).toBe(1)
    expect(out).toContain(`${file}:3:1: a stands in line 2 already.`)
    expect(out).toContain(`${file}:4:3: “3,5” is no number.`)
    expect(out).toContain(`${file}:5:1: This line has 1 rating, the first line names 2 raters.`)
    const value = await agreed(file)
    expect(value.numbers).toBeNull()
    expect(value.faults.map(({ line, code: fault }) => [line, fault])).toEqual([
      [3, 'agree.twice'],
      [4, 'agree.no_number'],
      [5, 'agree.cells'],
    ])
  })

  test.each([
    ['an empty file', [''], 'agree.empty'],
    ['one rater', ['who,x', 'a,1'], 'agree.raters'],
    ['two raters of one name', ['who,x,x', 'a,1,2'], 'agree.rater_twice'],
    ['a quotation mark that is left open', ['who,x,y', 'a,"1,2'], 'agree.unreadable'],
  ])('%s is told', async (_what, lines, fault) => {
    expect((await agreed(table(...lines))).faults.map(({ code }) => code)).toContain(fault)
  })

  test('a grade that is none of the categories is told', async () => {
    const { faults } = await agreed(table('who,x,y', 'a,low,hihg'), '--categories', 'low,high')
    expect(faults).toMatchObject([{ line: 2, column: 7, code: 'agree.no_category' }])
  })

  test.each([
    ['values all the same', ['who,x,y', 'a,2,2', 'b,2,2'], 'no_variance'],
    ['one subject', ['who,x,y', 'a,2,3'], 'too_few'],
  ])('%s: it says why there is nothing', async (_what, lines, why) => {
    const file = table(...lines)
    expect(await agreed(file)).toMatchObject({ why, numbers: null })
    const { code, out } = await evenhand('agree', file)
    expect([code, out.includes('Nothing can be worked out')]).toEqual([1, true])
  })

  test('a file that isn’t there and categories that are none end with 2', async () => {
    expect((await evenhand('agree', join(folder, 'none.csv'))).code).toBe(2)
    expect((await evenhand('agree', table('who,x,y'), '--categories', 'a,a')).code).toBe(2)
  })
})
