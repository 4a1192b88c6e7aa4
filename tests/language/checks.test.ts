import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { EXPRESSION_CODES } from '../../protocols/language/convert/link.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { READER_CODES } from '../../protocols/language/reader/problems.ts'
import { CHECKS } from '../../protocols/language/run-checks.ts'
import { SCHEMA_CODES } from '../../protocols/language/schema/problems.ts'
import { casesIn } from './corpus.ts'

const FOLDER = join(import.meta.dirname, '../../protocols/language/checks')
const files = Object.keys(import.meta.glob('../../protocols/language/checks/*.ts')).map(
  (path) => path.split('/').at(-1)?.replace(/\.ts$/, '') ?? '',
)
const faulty = casesIn('faulty')
const codeOf = (place: string): string => place.split(' ')[2] ?? ''
const firing = new Set(faulty.flatMap(({ expected }) => expected.map(({ place }) => codeOf(place))))

/** Told by tests of their own: a corpus file for each would be larger than all others together. */
const BOUNDS = new Set(['file_too_large', 'too_deep', 'too_many_nodes', 'protocol_missing'])
/** Needs a folder's name, which a corpus case has no say in. */
const BY_LABEL = new Set(['id_not_folder'])
/** Nothing in the corpus is out of bounds for the expression parser. */
const ELSEWHERE = new Set(['expression_too_large', ...BOUNDS, ...BY_LABEL, 'byte_order_mark'])

describe('every check can be found, read about, and seen at work', () => {
  test('each file of the folder is one check of its name', () => {
    expect([...CHECKS.keys()].toSorted()).toEqual(files.toSorted())
    expect(files.length).toBeGreaterThanOrEqual(60)
  })

  test.each(files)('%s has its page in the fixed order', (code) => {
    const text = readFileSync(join(FOLDER, `${code}.ts`), 'utf8')
    const page = /\/\*\*([\s\S]*?)\*\/\nexport default/.exec(text)?.[1] ?? ''
    const parts = ['What it does: ', 'Why it matters: ', 'Example:\n', 'Instead:\n'].map((part) =>
      page.indexOf(part),
    )
    expect(parts.every((at) => at >= 0)).toBe(true)
    expect(parts).toEqual(parts.toSorted((a, b) => a - b))
  })

  test('each check and each other problem fires in the corpus, and is quiet in a case that fires others', () => {
    const codes = [...files, ...READER_CODES, ...SCHEMA_CODES, ...Object.values(EXPRESSION_CODES)]
    expect(codes.filter((code) => !firing.has(code) && !ELSEWHERE.has(code))).toEqual([])
    const loud = codes.filter((code) =>
      faulty.every(({ expected }) => expected.some(({ place }) => codeOf(place) === code)),
    )
    expect(loud).toEqual([])
  })

  test('no two problems share a code', () => {
    const codes = [...files, ...READER_CODES, ...SCHEMA_CODES, ...Object.values(EXPRESSION_CODES)]
    expect(codes.toSorted()).toEqual([...new Set(codes)].toSorted())
  })

  test('every message and every mend is a sentence', () => {
    for (const { name, folder } of faulty) {
      for (const { code, message, mend } of readProtocol(folder).diagnostics) {
        expect(`${name} ${code}: ${message}`).toMatch(/: ["'A-Z0-9].*[.?!)]$/)
        expect(`${name} ${code}: ${mend}`).toMatch(/: ["'A-Z].*[.?!)]$/u)
        expect(`${message} ${mend}`).not.toMatch(/undefined|NaN|\[object|\{\d\}/)
      }
    }
  })
})
