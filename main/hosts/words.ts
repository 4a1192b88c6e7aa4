/** What hosts and the command line say; screens and reports have words of their own. */
import { IntlMessageFormat } from 'intl-messageformat'
import { PROGRAM } from '../program.ts'
import english from './words/en.json' with { type: 'json' }

export type HostWord = keyof typeof english
export type WordValues = Readonly<Record<string, string | number | boolean>>

/** The sentence for a key, with its values put in; `name` is the program's own. */
export function say(key: HostWord, values: WordValues = {}): string {
  return String(new IntlMessageFormat(english[key], 'en').format({ name: PROGRAM.name, ...values }))
}

export function isHostWord(key: string): key is HostWord {
  return Object.hasOwn(english, key)
}
