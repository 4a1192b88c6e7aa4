import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { describe, expect, test } from 'vitest'
import { AREAS, type AreaName, ROOT } from './areas.ts'
import { type Mutant, mutantsOf, statementStarts } from './mutants.ts'
import { sampled, wilson } from './sample.ts'
import { switchable } from './switchable.ts'
import { treeOf } from './tree.ts'

/** The text with one mutant in its place, without any switch. */
function mutated(text: string, { start, end, instead, block }: Mutant): string {
  // After a line without a semicolon a bracket would go on with it.
  const first = statementStarts(text).has(start) ? '0,' : ''
  return text.slice(0, start) + (block ? instead : `${first}(${instead})`) + text.slice(end)
}

const told = (text: string): readonly string[] =>
  mutantsOf(text).map(({ operator, instead }) => `${operator}: ${instead.replace(/\s+/g, ' ')}`)

test.each([
  ['export const a = b + c', ['arithmetic: (b) - (c)']],
  ["export const a = b + 'c'", ["string: ''"]],
  ['a(b < c)', ['equality: (b) <= (c)', 'equality: (b) >= (c)', 'conditional: true', 'conditional: false']],
  ['a(b ?? c)', ['logical: (b) && (c)']],
  ['if (a) b()', ['conditional: true', 'conditional: false']],
  ['while (a) { b() }', ['conditional: false', 'block: {}']],
  ['a(!b, -c)', ['boolean: b', 'unary: c']],
  ['a++\nb += 2', ['update: a--', 'assignment: b -= 2']],
  [
    'a?.b.some(c)?.[d]',
    ['optional chain: a?.b.some(c)[d]', 'method: a?.b.every(c)?.[d]', 'optional chain: a.b.some(c)?.[d]'],
  ],
  ['a(b.filter(c))', ['method: b']],
  ['a(() => b)', ['arrow function: undefined']],
  ["a([''], { b })", ['array: []', "string: 'mutated'", 'object: ({})']],
  ["import a from 'b'\nexport { c } from 'd'\nexport type E = 'f' | 'g'\nconst h: 'i' = j as 'k'", []],
])('%s', (text, expected) => {
  expect(told(text).toSorted()).toEqual(expected.toSorted())
})

/** Statements without semicolons, hosts within hosts, a chain that ends early and a block that declares. */
const PROGRAM = `
const seen = []
const step = (list, bound) => {
  let sum = 0
  for (const each of list ?? []) {
    if (each > bound && !(each % 2 === 0)) sum += each * 2
    seen.push(each)
    list?.filter((x) => x > 1).some((x) => x === each) ? sum++ : sum--
  }
  function half() { return sum / 2 }
  return half() + Math.max(sum, bound)
}
JSON.stringify([[[1, 2, 3, 5], 2], [[], 4], [undefined, 1]].map(([list, bound]) => step(list, bound)).concat(seen))
`

function resultOf(text: string, on: number): string {
  try {
    return String(runInNewContext(text, { mutantOn: (number: number) => number === on }, { timeout: 1000 }))
  } catch (error) {
    // Which name the engine gives the culprit depends on the text.
    return String(error).replace(/:.*/s, '')
  }
}

test('a switched text does what each mutant in its place does, and with none on what it did', () => {
  const mutants = mutantsOf(PROGRAM).map((mutant, index) => ({ ...mutant, number: index + 1 }))
  const text = switchable(PROGRAM, mutants)
  expect(mutants.length).toBeGreaterThan(40)
  expect(resultOf(text, 0)).toBe(resultOf(PROGRAM, 0))
  for (const mutant of mutants) {
    const { number } = mutant
    expect({ number, result: resultOf(text, number) }).toEqual({
      number,
      result: resultOf(mutated(PROGRAM, mutant), 0),
    })
  }
  const noticed = mutants.filter(({ number }) => resultOf(text, number) !== resultOf(PROGRAM, 0))
  expect(noticed.length).toBeGreaterThan(mutants.length / 2)
})

test.each(Object.keys(AREAS) as AreaName[])('mutants of %s are programs', (area) => {
  const files = globSync(AREAS[area].modules, { cwd: ROOT }).toSorted()
  expect(files.length).toBeGreaterThan(20)
  const [file = ''] = sampled(files, 1, 1)
  const text = readFileSync(join(ROOT, file), 'utf8')
  const own = mutantsOf(text).map((mutant, index) => ({ ...mutant, number: index + 1 }))
  expect(own.length).toBeGreaterThan(0)
  expect(() => treeOf(switchable(text, own))).not.toThrow()
  for (const mutant of sampled(own, 20, 1)) expect(() => treeOf(mutated(text, mutant))).not.toThrow()
})

describe('a sample', () => {
  test('is the same for a seed, has its size, and takes every one when it can', () => {
    const items = Array.from({ length: 100 }, (_, index) => index)
    expect(sampled(items, 10, 1)).toEqual(sampled(items, 10, 1))
    expect(sampled(items, 10, 1)).not.toEqual(sampled(items, 10, 2))
    expect(new Set(sampled(items, 10, 1)).size).toBe(10)
    expect(sampled(items, Number.POSITIVE_INFINITY, 1).toSorted((a, b) => a - b)).toEqual(items)
  })

  // R. G. Newcombe, Stat Med 1998; 17: 857-872, table I, method 3 (memory).
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('says of the whole what Wilson’s interval says: %i of %i', (found, of, low, high) => {
    const interval = wilson(found, of)
    expect(interval[0]).toBeCloseTo(low, 4)
    expect(interval[1]).toBeCloseTo(high, 4)
  })
})
