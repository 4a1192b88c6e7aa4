/** What hosts and the command line say; screens and reports have words of their own. */
import { IntlMessageFormat } from 'intl-messageformat'
import { PROGRAM } from '../program.ts'
import english from './words/en.json' with { type: 'json' }

export type HostWord = keyof typeof english
export type WordValues = Readonly<Record<string, string | number | boolean>>

const OWN = { name: PROGRAM.name, command_name: PROGRAM.command }

/** The sentence for a key, with its values put in; `name` and `command_name` are the program's own. */
export function say(key: HostWord, values: WordValues = {}): string {
  return String(new IntlMessageFormat(english[key], 'en').format({ ...OWN, ...values }))
}

export function isHostWord(key: string): key is HostWord {
  return Object.hasOwn(english, key)
}
