/**
 * Expressions that mean the same in plain CEL, evaluated by two other implementations: `@bufbuild/cel` 0.6.1, which
 * shares nothing with ours, and the evaluator of `@marcbachmann/cel-js` 8.0.0, of which only the parser is shared.
 */
import { isCelError, isCelList, isCelMap, run } from '@bufbuild/cel'
import { evaluate as evaluateCel } from '@marcbachmann/cel-js'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { evaluateOurs } from './cel-ours.ts'
import { number, SHARED, truth } from './cel-shared.ts'

function ours(source: string): unknown {
  const found = evaluateOurs(source)
  if ('value' in found) return found.value
  throw new Error(`${source}: ${JSON.stringify(found)}`)
}

function plain(value: unknown): unknown {
  if (typeof value === 'bigint') return Number(value)
  if (isCelList(value)) return [...value].map(plain)
  if (isCelMap(value)) return Object.fromEntries([...value].map(([key, part]) => [String(key), plain(part)]))
  return Array.isArray(value) ? value.map(plain) : value
}

function second(source: string): unknown {
  const value = run(source)
  if (isCelError(value)) throw value
  return plain(value)
}

describe.each([
  ['@bufbuild/cel', second],
  ['@marcbachmann/cel-js', (source: string) => plain(evaluateCel(source))],
])('STD-FMT-3 the same as by %s', (_name, theirs) => {
  test.each(SHARED)('%s', (source) => {
    expect(ours(source)).toEqual(theirs(source))
  })

  test('made up at random, numbers and conditions alike', () => {
    fc.assert(
      fc.property(fc.oneof(number, truth), (source) => {
        fc.pre(source.length < 2000)
        expect(ours(source)).toEqual(theirs(source))
      }),
      { numRuns: 300 },
    )
  })
})
