/**
 * Every sentence a screen shows, by key. `words/en/<area>.json` holds ICU MessageFormat texts; the key
 * `<area>.<name>` finds one. `?words=pseudo` in the address bends every text so that a sentence which bypassed
 * this file stands out.
 */
import { IntlMessageFormat } from 'intl-messageformat'
import { bend } from './pseudo.ts'

export type Values = Readonly<Record<string, string | number | boolean | Date>>

const LANGUAGE = 'en-GB'
const list = new Intl.ListFormat(LANGUAGE, { style: 'long', type: 'conjunction' })
const files = import.meta.glob<Record<string, string>>('./en/*.json', { eager: true, import: 'default' })

const texts = new Map<string, string>()
for (const [path, area] of Object.entries(files)) {
  const name = path.slice(path.lastIndexOf('/') + 1, -'.json'.length)
  for (const [key, text] of Object.entries(area)) texts.set(`${name}.${key}`, text)
}

const pseudo = new URLSearchParams(globalThis.location?.search ?? '').get('words') === 'pseudo'
const formats = new Map<string, IntlMessageFormat>()

function formatOf(key: string, text: string): IntlMessageFormat {
  const known = formats.get(key)
  if (known) return known
  const plain = new IntlMessageFormat(text, LANGUAGE, undefined, { ignoreTag: true })
  const format = pseudo ? new IntlMessageFormat(bend(plain.getAst()), LANGUAGE) : plain
  formats.set(key, format)
  return format
}

/** Whether there is a text for this key: for codes that come from elsewhere, such as a fault's. */
export function hasWords(key: string): boolean {
  return texts.has(key)
}

/** The text for a key with its values filled in. A key without a text is a defect: it throws under test. */
export function say(key: string, values: Values = {}): string {
  const text = texts.get(key)
  if (text === undefined) {
    if (import.meta.env.MODE === 'test') throw new Error(`No words for "${key}"`)
    console.error(`No words for "${key}"`)
    return key
  }
  return String(formatOf(key, text).format(values))
}

/** Several things as one phrase: `a, b and c`. */
export const listed = (these: readonly string[]): string => list.format(these)
