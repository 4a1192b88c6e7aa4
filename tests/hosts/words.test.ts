import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { IntlMessageFormat } from 'intl-messageformat'
import { describe, expect, test } from 'vitest'
import words from '../../main/hosts/words/en.json' with { type: 'json' }

const sourcesUnder = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(folder, name), 'utf8'))
    .join('\n')

describe('what hosts and the command line say', () => {
  test('every sentence is a message that compiles', () => {
    for (const [key, text] of Object.entries(words)) {
      const parts = new IntlMessageFormat(text, 'en').getAst()
      expect([key, parts.length > 0]).toEqual([key, true])
    }
  })

  test('every reason for which records don’t open has a sentence with a mend', () => {
    const codes = [...sourcesUnder('main/records').matchAll(/'(records\.(?!db')[a-z-]+)'/g)].map(
      ([, code]) => code ?? '',
    )
    expect(codes.length).toBeGreaterThan(5)
    for (const code of new Set(codes)) expect([code, Object.hasOwn(words, code)]).toEqual([code, true])
    const ofRecords = Object.entries(words).filter(([key]) => key.startsWith('records.'))
    for (const [key, text] of ofRecords) expect([key, text.split('\n').length]).toEqual([key, 2])
  })

  test('no sentence is left that nobody says', () => {
    const source = sourcesUnder('main/hosts')
    const worked =
      /^(records|verify|compare|severity|missing|norm_caution|other_hand|change_caution|change_sentence|unit|undefined|definition|uncertainty|norm\.status)\./
    const silent = Object.keys(words).filter((key) => !worked.test(key) && !source.includes(`'${key}'`))
    expect(silent).toEqual([])
  })
})
