import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, test } from 'vitest'
import { parseDocument } from 'yaml'
import { readProtocol } from '../../protocols/language/read.ts'
import { READER_CODES } from '../../protocols/language/reader/problems.ts'
import { protocolJsonSchema } from '../../protocols/language/schema/json-schema.ts'
import { NODE_SCHEMAS } from '../../protocols/language/schema/kinds.ts'
import { SCHEMA_CODES } from '../../protocols/language/schema/problems.ts'
import { evenhand, jsonOf } from '../command/evenhand.ts'
import { casesIn } from './corpus.ts'

const schema = protocolJsonSchema()
const ajv = new Ajv2020({ strict: true, strictRequired: false, strictTuples: false, allowUnionTypes: true })
const fits = ajv.compile(schema)

const valueOf = (text: string): unknown => parseDocument(text, { version: '1.2', schema: 'core' }).toJS()

const library = Object.entries(
  import.meta.glob<string>('../../protocols/library/*/protocol.yaml', {
    eager: true,
    query: '?raw',
    import: 'default',
  }),
)
const corpus = [...casesIn('sound'), ...casesIn('faulty')].map(({ name, folder }) => ({
  name,
  folder,
  text: folder.files.get('protocol.yaml') ?? '',
}))

describe('the JSON Schema of the protocol file says what the reader says of shapes', () => {
  test('is of draft 2020-12 and knows every kind of step and section', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(Object.keys(schema.$defs ?? {}).toSorted()).toEqual(['step', ...NODE_SCHEMAS.keys()].toSorted())
  })

  test('is printed by the command line', async () => {
    expect(jsonOf(await evenhand('schema', 'protocol'))).toEqual(JSON.parse(JSON.stringify(schema)))
  })

  test.each(library)('%s fits', (_path, text) => {
    fits(valueOf(text))
    expect(fits.errors).toBeNull()
  })

  test.each(library)('%s with an unknown key in any of its maps fits no more', (_path, text) => {
    const seen = mapsIn(valueOf(text)).filter(({ path }) => !isOpen(path))
    expect(seen.length).toBeGreaterThan(20)
    for (const { path } of seen) {
      const value = valueOf(text)
      const map = path.reduce<unknown>((inside, part) => (inside as Keyed)[part], value) as Keyed
      map['no_such_key'] = 'x'
      expect({ path, fits: fits(value) }).toEqual({ path, fits: false })
    }
  })

  test.each(corpus)('agrees with the reader on $name', ({ folder, text }) => {
    const { diagnostics } = readProtocol(folder)
    const inFile = diagnostics.filter(
      ({ file, severity }) => file === 'protocol.yaml' && severity === 'error',
    )
    if (inFile.some(({ code }) => (READER_CODES as readonly string[]).includes(code))) return
    const shape = inFile.filter(({ code }) => (SCHEMA_CODES as readonly string[]).includes(code))
    if (shape.some(({ code }) => BEYOND.has(code))) return
    expect({ fits: fits(valueOf(text)), shape }).toEqual({ fits: shape.length === 0, shape })
  })
})

/** JSON has no order of keys, so that a kind that doesn't come first is no problem of shape there. */
const BEYOND = new Set(['kind_not_first'])

type Keyed = Record<string | number, unknown>

function mapsIn(value: unknown, path: readonly (string | number)[] = []): readonly { path: typeof path }[] {
  if (Array.isArray(value)) return value.flatMap((item, index) => mapsIn(item, [...path, index]))
  if (typeof value !== 'object' || value === null) return []
  return [{ path }, ...Object.entries(value).flatMap(([key, inside]) => mapsIn(inside, [...path, key]))]
}

/** Maps whose keys are the author's own names. */
const NAMED = ['accommodations', 'sources', 'kit', 'conditions', 'lists', 'happenings']

function isOpen(path: readonly (string | number)[]): boolean {
  const [first] = path
  if (path.length === 1 && NAMED.includes(String(first))) return true
  if (first === 'lists') return true
  return ['options', 'gathered', 'credit', 'bands', 'counts-as', 'scale'].includes(String(path.at(-1)))
}
