/** Texts in ICU MessageFormat (unicode-org.github.io/icu): the one module of the domain that knows the library. */
import { IntlMessageFormat } from 'intl-messageformat'

interface MessageFault {
  /** Offset into the text. */
  readonly start: number
  readonly end: number
  /** The parser's name for it, in plain words. */
  readonly reason: string
}

export interface Message {
  /** Names in braces, each once. */
  readonly arguments: readonly string[]
  readonly fault: MessageFault | null
}

type Elements = ReturnType<IntlMessageFormat['getAst']>

/** Reads a text's braces. Never throws. */
export function readMessage(words: string): Message {
  try {
    const names = new Set<string>()
    gather(made('en', words).getAst(), names)
    return { arguments: [...names], fault: null }
  } catch (error) {
    const { start, end } = locationOf(error, words.length)
    return { arguments: [], fault: { start, end, reason: reasonOf(error) } }
  }
}

const KEPT = 500
const compiled = new Map<string, IntlMessageFormat>()

function made(language: string, words: string): IntlMessageFormat {
  const key = `${language}\u0000${words}`
  const known = compiled.get(key)
  if (known) return known
  const message = new IntlMessageFormat(words, language, undefined, { ignoreTag: true })
  if (compiled.size >= KEPT) compiled.clear()
  compiled.set(key, message)
  return message
}

/**
 * The text with its arguments put in. An argument without a value shows as "…", as does a text whose language
 * the machine doesn't know in its plain form: words for a client never turn into an error.
 */
export function formatMessage(
  language: string,
  words: string,
  valueOf: (name: string) => string | number | null,
): string {
  const { arguments: names, fault } = readMessage(words)
  if (fault) return words
  if (names.length === 0 && !words.includes("'")) return words
  const values = Object.fromEntries(names.map((name) => [name, valueOf(name) ?? '…']))
  try {
    return String(made(language, words).format(values))
  } catch {
    return words
  }
}

function gather(elements: Elements, names: Set<string>): void {
  for (const element of elements) {
    if ('value' in element && typeof element.value === 'string' && element.type !== 0)
      names.add(element.value)
    if ('options' in element) {
      for (const { value } of Object.values(element.options)) gather(value, names)
    }
    if ('children' in element) gather(element.children, names)
  }
}

function locationOf(error: unknown, length: number): { readonly start: number; readonly end: number } {
  if (error instanceof SyntaxError && 'location' in error) {
    const location = error.location as {
      readonly start: { offset: number }
      readonly end: { offset: number }
    }
    return { start: location.start.offset, end: Math.max(location.start.offset, location.end.offset) }
  }
  return { start: 0, end: length }
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message.toLowerCase().replaceAll('_', ' ') : 'not readable'
}
