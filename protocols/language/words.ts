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
 * A text in words. What the wording lacks comes in those of its language at large, else in the protocol's own.
 * Names in braces and `{ from }` are read from `scope`; without one, or where it has no value, "…" stands there.
 */
export function textOf(protocol: Protocol, wording: Wording, text: Text, scope: Scope | null = null): string {
  const key = 'key' in text ? text.key : itemKey(protocol, text, scope)
  if (key === null) return 'from' in text ? (spelled(text, scope) ?? '…') : '…'
  const found = fallbacksOf(protocol, wording).find(({ texts }) => Object.hasOwn(texts, key))
  const words = found?.texts[key]
  return words === undefined ? '…' : formatMessage(found?.language ?? '', words, argument(scope))
}

/**
 * Where a text is looked for: the wording itself, then the files of its language at large (`de` for `de-CH`), then
 * the protocol's own words.
 */
function fallbacksOf(protocol: Protocol, wording: Wording): readonly Wording[] {
  const atLarge = languageAtLarge(wording.language)
  const kin = protocol.words.filter(({ file, language }) => file !== null && language === atLarge)
  return [wording, ...(wording.language === atLarge ? [] : kin), wordingFor(protocol, null)]
}

/** The language of a tag without region or script: `de` of `de-CH`. */
export const languageAtLarge = (tag: string): string => tag.split('-')[0] ?? tag

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
