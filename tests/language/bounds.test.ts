import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parse, stringify } from 'yaml'
import { readProtocol } from '../../protocols/language/read.ts'
import { runChecks } from '../../protocols/language/run-checks.ts'
import { Draft } from '../../protocols/language/convert/draft.ts'
import { readYaml } from '../../protocols/language/reader/yaml.ts'
import { casesIn } from './corpus.ts'
import { folderAt, folderOf } from './folders.ts'

const codes = (text: string): readonly string[] =>
  readProtocol(folderOf(text)).diagnostics.map(({ code }) => code)
const sound = casesIn('sound')
const texts = sound.map(({ folder }) => folder.files.get('protocol.yaml') ?? '')
const [least = ''] = sound
  .filter(({ name }) => name === 'least.yaml')
  .map(({ folder }) => folder.files.get('protocol.yaml') ?? '')

describe('STD-FMT-4 what no test needs is refused by name, quickly', () => {
  test('a file that is too large', () => {
    expect(codes(`${least}# ${'x'.repeat(256 * 1024)}\n`)).toEqual(['file_too_large'])
  })

  test.each([
    ['brackets', '['.repeat(5000)],
    ['closed brackets', `a: ${'['.repeat(5000)}${']'.repeat(5000)}`],
    ['braces', `a: ${'{ a: '.repeat(5000)}`],
    [
      'lists by lines',
      `${Array.from({ length: 200 }, (_, depth) => `${' '.repeat(depth)}-`).join('\n')} x\n`,
    ],
  ])('values nested too deep: %s', (_, text) => {
    expect(codes(text)).toContain('too_deep')
  })

  test('more values than a file may have', () => {
    expect(codes(`a: [${'1,'.repeat(30_000)}]\n`)).toEqual(['too_many_nodes'])
  })

  test('a table and a figure that are too large', () => {
    const full = folderAt(`${import.meta.dirname}/corpus/sound/full`)
    const large = ['norms/adults.csv', 'figures/table.svg'].map(
      (file) => [file, 'x'.repeat(600_000)] as const,
    )
    const { diagnostics } = readProtocol({ label: '', files: new Map([...full.files, ...large]) })
    const told = diagnostics.filter(({ severity }) => severity === 'error')
    expect(told.map(({ code, file }) => `${code} ${file}`)).toEqual([
      'file_too_large figures/table.svg',
      'file_too_large norms/adults.csv',
    ])
  })

  test('aliases never multiply', () => {
    const laughs = Array.from({ length: 20 }, (_, i) => `a${i + 1}: [*a${i}, *a${i}, *a${i}, *a${i}]`)
    expect(codes(`a0: &a0 x\n${laughs.join('\n')}\n`)).toContain('alias')
  })

  test('a folder without a protocol', () => {
    const { protocol, diagnostics } = readProtocol({ label: 'clinic/empty', files: new Map() })
    expect(protocol).toBeNull()
    expect(diagnostics).toMatchObject([
      { code: 'protocol_missing', file: 'clinic/empty/protocol.yaml', line: 1, column: 1 },
    ])
  })

  test('a byte order mark is named, and moves no column', () => {
    const { protocol, diagnostics } = readProtocol(folderOf(`\uFEFF${least}`))
    expect(diagnostics.map(({ code }) => code)).toEqual(['byte_order_mark'])
    expect(protocol).not.toBeNull()
  })

  test('an expression that is nested too deep', () => {
    const deep = `"${'('.repeat(100)}first(carry.time)${')'.repeat(100)}"`
    expect(codes(least.replace('first(carry.time)', deep))).toEqual(['expression_too_large'])
  })
})

describe('a folder’s name and label', () => {
  const files = folderOf(least).files

  test('an id that is not the folder’s name is told', () => {
    expect(readProtocol({ label: 'tests/peg_board', files }).diagnostics.map(({ code }) => code)).toEqual([
      'id_not_folder',
    ])
    expect(readProtocol({ label: 'tests/ring_board/', files }).diagnostics).toEqual([])
  })

  test('the label stands before the file in every diagnostic', () => {
    const faulty = folderOf(least.replace('title: Ring board', 'title: 9')).files
    const { diagnostics } = readProtocol({ label: 'tests/ring_board', files: faulty })
    expect(diagnostics).toMatchObject([{ file: 'tests/ring_board/protocol.yaml', code: 'wrong_type' }])
  })
})

test('a check that breaks down is itself reported, and the others still run', () => {
  const { tree } = readYaml('protocol.yaml', least)
  if (tree?.is !== 'map') throw new Error('the sound file has a map')
  const failing = {
    code: 'broken',
    severity: 'advice',
    needs: [],
    *run() {
      yield { at: tree.at, message: 'First.', mend: 'None.' }
      throw new Error('out of luck')
    },
  } as const
  const told = runChecks(new Draft(folderOf(least), tree, []), [], [failing])
  expect(told).toMatchObject([{ code: 'check_crashed', severity: 'error' }])
  expect(told[0]?.message).toContain('broken')
})

/** What is wrong with how a text is read, whatever the text: empty when all is as promised. */
function broken(text: string): readonly string[] {
  const { protocol, diagnostics } = readProtocol(folderOf(text))
  const lines = text.split('\n')
  const astray = diagnostics.filter(
    ({ line, column, endLine, endColumn }) =>
      line < 1 ||
      line > lines.length ||
      column > (lines[line - 1] ?? '').length + 1 ||
      endLine < line ||
      (endLine === line && endColumn < column),
  )
  const crashed = diagnostics.filter(({ code }) => code === 'check_crashed').map(({ message }) => message)
  const errors = diagnostics.some(({ severity }) => severity === 'error')
  const kept = (protocol === null) === errors ? [] : ['a protocol with errors, or none without']
  return [...astray.map(({ code }) => `${code} points nowhere`), ...crashed, ...kept]
}

type Keys = readonly (string | number)[]

/** The ways to every value inside a value. */
function pathsIn(value: unknown, path: Keys = []): readonly Keys[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inner = Array.isArray(value) ? [...value.entries()] : Object.entries(value)
  return [path, ...inner.flatMap(([key, each]) => pathsIn(each, [...path, key]))]
}

function replaced(value: unknown, [key, ...rest]: Keys, instead: unknown): unknown {
  if (key === undefined) return instead
  if (Array.isArray(value))
    return value.map((each, index) => (index === key ? replaced(each, rest, instead) : each))
  const map = value as Readonly<Record<string, unknown>>
  return { ...map, [key]: replaced(map[key], rest, instead) }
}

describe('reading never throws and always says where', () => {
  test('a sound text with a stretch taken out, doubled or replaced', () => {
    const text = fc.constantFrom(...texts)
    const piece = fc.constantFrom(
      '',
      ' ',
      '\n',
      '\t',
      ':',
      '- ',
      '{',
      '}',
      '[',
      ']',
      '"',
      "'",
      '&a',
      '*a',
      '!x',
      '0',
      '~',
      '|',
      '>',
      '#',
      '\u0000',
      '\u202e',
      '😀',
      '{ from: x }',
      'null',
      '.inf',
    )
    fc.assert(
      fc.property(text, fc.nat(), fc.nat(40), piece, (sample, from, length, instead) => {
        const start = from % sample.length
        expect(broken(sample.slice(0, start) + instead + sample.slice(start + length))).toEqual([])
      }),
      { seed: 20261, numRuns: 200 },
    )
  })

  test('a sound text with two of its lines swapped or one doubled', () => {
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.nat(), fc.nat(), fc.boolean(), (sample, a, b, swap) => {
        const lines = sample.split('\n')
        const one = a % lines.length
        const other = b % lines.length
        const [first = '', second = ''] = [lines[one], lines[other]]
        if (swap) lines[other] = first
        lines[one] = second
        expect(broken(lines.join('\n'))).toEqual([])
      }),
      { seed: 20262, numRuns: 150 },
    )
  })

  test('a sound protocol with any value replaced by any other', () => {
    const value = fc.oneof(
      fc.constantFrom(
        null,
        true,
        false,
        0,
        -1,
        1e21,
        '',
        ' ',
        'x',
        '60 s',
        'over 60 s',
        '1 x',
        'hand',
        'a.b(',
        [],
        {},
      ),
      fc.constantFrom(
        [[]],
        [{}],
        { from: 'x' },
        { from: 1 },
        { from: null },
        { said: [] },
        { is: {} },
        { least: 1 },
      ),
      fc.jsonValue({ maxDepth: 2 }),
    )
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.nat(), value, (sample, at, instead) => {
        const made = parse(sample) as unknown
        const paths = pathsIn(made)
        const path = paths[at % paths.length] ?? []
        expect(broken(stringify(replaced(made, path, instead)))).toEqual([])
      }),
      { seed: 20265, numRuns: 150 },
    )
  })

  test('any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        expect(broken(text)).toEqual([])
      }),
      {
        seed: 20263,
        numRuns: 150,
      },
    )
  })

  test('tables, words and figures that were cut anywhere', () => {
    const full = folderAt(`${import.meta.dirname}/corpus/sound/full`)
    const others = [...full.files.keys()].filter((file) => file !== 'protocol.yaml')
    fc.assert(
      fc.property(
        fc.constantFrom(...others),
        fc.nat(),
        fc.string({ unit: 'binary', maxLength: 8 }),
        (file, at, instead) => {
          const text = full.files.get(file) ?? ''
          const cut = at % (text.length + 1)
          const files = new Map([...full.files, [file, text.slice(0, cut) + instead]])
          expect(readProtocol({ label: '', files }).diagnostics.map(({ code }) => code)).not.toContain(
            'check_crashed',
          )
        },
      ),
      { seed: 20264, numRuns: 150 },
    )
  })
})
