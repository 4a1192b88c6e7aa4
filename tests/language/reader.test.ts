import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stringify } from 'yaml'
import { scalarOffsets } from '../../protocols/language/reader/scalar-offsets.ts'
import { childOf, type ScalarNode } from '../../protocols/language/reader/tree.ts'
import { readYaml } from '../../protocols/language/reader/yaml.ts'

/** The value behind `key` in a text that has to be read without a problem. */
function scalarIn(text: string, key: string): ScalarNode {
  const { tree, problems } = readYaml('protocol.yaml', text)
  const node = childOf(tree, key)
  if (problems.length > 0 || node?.is !== 'scalar') throw new Error(JSON.stringify({ text, problems, node }))
  return node
}

describe('STD-FMT-4 values are read as YAML 1.2 with its core schema says', () => {
  test.each([
    ['no', 'no'],
    ['yes', 'yes'],
    ['on', 'on'],
    ['off', 'off'],
    ['y', 'y'],
    ['12:30', '12:30'],
    ['1:30:00', '1:30:00'],
    ['2024-05-01', '2024-05-01'],
    ['2024-05-01T10:00:00Z', '2024-05-01T10:00:00Z'],
    ['010', 10],
    ['0o14', 12],
    ['0x1F', 31],
    ['0b11', '0b11'],
    ['1_000', '1_000'],
    ['1e3', 1000],
    ['.5', 0.5],
    ['+1', 1],
    ['-0.25', -0.25],
    ['true', true],
    ['False', false],
    ['tRUE', 'tRUE'],
    ['~', null],
    ['null', null],
    ['NULL', null],
    ['60 s', '60 s'],
    ['1,5', '1,5'],
    ['"1"', '1'],
    ["'true'", 'true'],
    ['1.0.0', '1.0.0'],
    ['=', '='],
  ])('%s', (written, value) => {
    expect(scalarIn(`a: ${written}\n`, 'a').value).toBe(value)
  })

  test('a number keeps how it was written', () => {
    expect(scalarIn('a: 010\n', 'a').written).toBe('010')
    expect(scalarIn('a: 1.50\n', 'a').written).toBe('1.50')
  })

  test('also where the file says that it is of an older version', () => {
    expect(scalarIn('%YAML 1.1\n---\na: no\n', 'a').value).toBe('no')
    expect(scalarIn('%YAML 1.1\n---\na: 010\n', 'a').value).toBe(10)
    expect(scalarIn('%YAML 1.1\n---\na: 12:30:45\n', 'a').value).toBe('12:30:45')
  })

  test('a key that could mean something to a program is a key like any other', () => {
    const { tree } = readYaml('protocol.yaml', '__proto__: { polluted: true }\nconstructor: x\n')
    expect(childOf(tree, 'constructor')).toMatchObject({ value: 'x' })
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false)
  })
})

describe('each character of a value is found again in the file', () => {
  const styles = ['PLAIN', 'QUOTE_SINGLE', 'QUOTE_DOUBLE', 'BLOCK_FOLDED', 'BLOCK_LITERAL'] as const
  const word = fc.stringMatching(/^[a-z0-9_.()<>='"+*/ -]{1,12}$/)
  const value = fc
    .array(word, { minLength: 1, maxLength: 30 })
    .map((words) => `x ${words.join(' ')} y`.replace(/ +/g, ' '))

  test.each(styles)('in the style %s, over several lines', (style) => {
    fc.assert(
      fc.property(value, fc.integer({ min: 20, max: 60 }), (written, width) => {
        const text = stringify(
          { a: { b: written } },
          { lineWidth: width, defaultStringType: style, defaultKeyType: 'PLAIN' },
        )
        const { tree } = readYaml('protocol.yaml', text)
        const node = childOf(childOf(tree, 'a'), 'b')
        if (node?.is !== 'scalar') throw new Error(text)
        const offsets = scalarOffsets(text, node)
        expect(offsets.length).toBe(node.written.length + 1)
        // A blank may stand where a line was folded, a character may be written as an escape.
        const astray = [...node.written].filter((char, index) => {
          const there = text[offsets[index] ?? -1]
          return !/\s/.test(char) && there !== char && there !== '\\'
        })
        expect(astray).toEqual([])
      }),
      { seed: 7, numRuns: 200 },
    )
  })

  test('through escapes for characters beyond the basic plane', () => {
    const text = 'a: "\\U0001F600\\x41\\u00e9 z"\n'
    const node = scalarIn(text, 'a')
    const offsets = scalarOffsets(text, node)
    expect(text[offsets[node.written.indexOf('z')] ?? -1]).toBe('z')
    expect(offsets[node.written.indexOf('A')]).toBe(text.indexOf('\\x41'))
  })

  test('through a line that is continued with a backslash', () => {
    const text = 'a: "first(run.\\\n    time) + zz"\n'
    const node = scalarIn(text, 'a')
    expect(node.written).toBe('first(run.time) + zz')
    const offsets = scalarOffsets(text, node)
    expect(offsets[node.written.indexOf('zz')]).toBe(text.indexOf('zz'))
    expect(offsets[node.written.indexOf('time')]).toBe(text.indexOf('time'))
  })
})
