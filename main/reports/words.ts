/** What reports say; screens, hosts and the command line have words of their own. */
import { IntlMessageFormat } from 'intl-messageformat'
import english from './words/en.json' with { type: 'json' }

export type ReportWord = keyof typeof english
export type WordValues = Readonly<Record<string, string | number>>

export const LANGUAGE = 'en'

const compiled = new Map<string, IntlMessageFormat>()

/** The sentence for a key with its values put in. Values are text as it is: nothing in them is read as a message. */
export function say(key: ReportWord, values: WordValues = {}): string {
  let message = compiled.get(key)
  if (!message) {
    message = new IntlMessageFormat(english[key], LANGUAGE)
    compiled.set(key, message)
  }
  return String(message.format({ ...values }))
}

export function hasWords(key: string): key is ReportWord {
  return Object.hasOwn(english, key)
}
