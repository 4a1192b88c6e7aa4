/** The words of a protocol in one of its wordings. */
import { evaluate, type Scope } from './expressions/index.ts'
import { formatMessage } from './messages.ts'
import type { Protocol, Text, Wording } from './model.ts'

/** The wording of that file; the protocol's own (`null`) where there is no such file. */
export function wordingFor(protocol: Protocol, file: string | null): Wording {
  const own = protocol.words[0] ?? { file: null, language: protocol.language, texts: {} }
  return protocol.words.find((wording) => wording.file === file) ?? own
}

/**
 * A text in words. What the wording lacks comes in the protocol's own words. Names in braces and `{ from }`
 * are read from `scope`; without one, or where it has no value, "…" stands there.
 */
export function textOf(protocol: Protocol, wording: Wording, text: Text, scope: Scope | null = null): string {
  const key = 'key' in text ? text.key : itemKey(protocol, text, scope)
  if (key === null) return 'from' in text ? (spelled(text, scope) ?? '…') : '…'
  const translated = Object.hasOwn(wording.texts, key) ? wording.texts[key] : undefined
  if (translated !== undefined) return formatMessage(wording.language, translated, argument(scope))
  const own = wordingFor(protocol, null)
  const words = Object.hasOwn(own.texts, key) ? own.texts[key] : undefined
  return words === undefined ? '…' : formatMessage(own.language, words, argument(scope))
}

function spelled(text: Extract<Text, { from: unknown }>, scope: Scope | null): string | null {
  if (!scope) return null
  const { value } = evaluate(text.from, scope)
  return typeof value === 'string' ? value : null
}

/** An expression picks an item's own words; their key leads to the words in another language. */
function itemKey(
  protocol: Protocol,
  text: Extract<Text, { from: unknown }>,
  scope: Scope | null,
): string | null {
  const words = spelled(text, scope)
  if (words === null) return null
  const own = wordingFor(protocol, null).texts
  const lists = Object.keys(protocol.lists)
  const found = Object.keys(own).find(
    (key) => own[key] === words.trim() && lists.some((list) => key.startsWith(`${list}.`)),
  )
  return found ?? null
}

/** A loop's item is told by its id, everything else by its value. */
function argument(scope: Scope | null): (name: string) => string | number | null {
  return (name) => {
    const datum = scope?.read(name) ?? null
    const single = datum?.is === 'record' ? (datum.fields['id'] ?? null) : datum
    if (single?.is === 'text') return single.text
    if (single?.is === 'number') return single.n
    return single?.is === 'bool' ? String(single.bool) : null
  }
}
