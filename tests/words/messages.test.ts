import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { IntlMessageFormat } from 'intl-messageformat'
import { describe, expect, test } from 'vitest'

const ROOT = join(import.meta.dirname, '..', '..')

type Messages = ReadonlyMap<string, string>

const messagesIn = (path: string): Messages =>
  new Map(Object.entries(JSON.parse(readFileSync(path, 'utf8')) as Record<string, string>))

/** One file a language: `words/en.json`. */
function ofFiles(folder: string): ReadonlyMap<string, Messages> {
  const names = readdirSync(join(ROOT, folder)).filter((name) => name.endsWith('.json'))
  return new Map(names.map((name) => [basename(name, '.json'), messagesIn(join(ROOT, folder, name))]))
}

/** One folder a language with a file an area: `words/en/result.json`. */
function ofFolders(folder: string): ReadonlyMap<string, Messages> {
  const languages = readdirSync(join(ROOT, folder), { withFileTypes: true }).filter((one) =>
    one.isDirectory(),
  )
  return new Map(
    languages.map(({ name }) => {
      const areas = [...ofFiles(join(folder, name))]
      return [
        name,
        new Map(
          areas.flatMap(([area, texts]) =>
            [...texts].map(([key, text]) => [`${area}.${key}`, text] as const),
          ),
        ),
      ]
    }),
  )
}

const PLACES = {
  screens: ofFolders('renderer/words'),
  reports: ofFiles('main/reports/words'),
  hosts: ofFiles('main/hosts/words'),
} as const

const formatOf = (text: string, language: string) =>
  new IntlMessageFormat(text, language, undefined, { ignoreTag: true })

type Part = ReturnType<IntlMessageFormat['getAst']>[number]

/** Every argument that a message asks for, with a value for each form that it has. */
function argumentsOf(parts: readonly Part[]): ReadonlyMap<string, readonly (string | number)[]> {
  const found = new Map<string, readonly (string | number)[]>()
  for (const part of parts) {
    if (part.type === 0 || part.type === 7 || part.type === 8) continue
    const forms = 'options' in part ? Object.keys(part.options) : []
    const isCounted = part.type === 6
    found.set(part.value, isCounted ? [0, 1, 2, 5, 21] : forms.length > 0 ? [...forms, 'anything'] : ['x'])
    if (part.type === 2 || part.type === 3 || part.type === 4) found.set(part.value, [1])
    if (!('options' in part)) continue
    for (const { value } of Object.values(part.options))
      for (const [name, values] of argumentsOf(value)) if (!found.has(name)) found.set(name, values)
  }
  return found
}

describe.each(Object.entries(PLACES))('STD-FMT-5 the words of %s', (_place, languages) => {
  const english = languages.get('en') ?? new Map<string, string>()

  test.each([...languages])(
    'each message compiles and is said with every form of its arguments: %s',
    (language, texts) => {
      expect(texts.size).toBeGreaterThan(50)
      for (const [key, text] of texts) {
        const format = formatOf(text, language)
        const asked = [...argumentsOf(format.getAst())]
        const most = Math.max(1, ...asked.map(([, values]) => values.length))
        for (let form = 0; form < most; form += 1) {
          const values = Object.fromEntries(asked.map(([name, all]) => [name, all[form % all.length] ?? 'x']))
          // The word for what is merely counted is empty; of any other nothing may be left unsaid.
          const said = String(format.format(values))
          expect([key, said === '' && form === 0, /undefined|\[object/.test(said)]).toEqual([
            key,
            text === '',
            false,
          ])
        }
      }
    },
  )

  test.each([...languages])(
    'it has the messages of English and asks for no other arguments: %s',
    (language, texts) => {
      expect([...texts.keys()].toSorted()).toEqual([...english.keys()].toSorted())
      for (const [key, text] of texts) {
        const declared = argumentsOf(formatOf(english.get(key) ?? '', 'en').getAst())
        const asked = [...argumentsOf(formatOf(text, language).getAst()).keys()]
        expect(
          asked.filter((name) => !declared.has(name)),
          `${key} in ${language}`,
        ).toEqual([])
      }
    },
  )
})

test('a message that doesn’t compile, or asks for what it isn’t given, is found', () => {
  expect(() => formatOf('{count, plural, one {One}}', 'en')).toThrow(/MISSING_OTHER_CLAUSE/)
  expect(() => formatOf('{name', 'en')).toThrow(/EXPECT_ARGUMENT_CLOSING_BRACE/)
  expect(() =>
    formatOf('{hand, select, right {Right} other {{who}}}', 'en').format({ hand: 'left' }),
  ).toThrow(/who/)
  expect([
    ...argumentsOf(formatOf('{hand, select, right {Right} other {{who}}}', 'en').getAst()).keys(),
  ]).toEqual(['hand', 'who'])
})
