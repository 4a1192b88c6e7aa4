import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { IntlMessageFormat } from 'intl-messageformat'
import { expect, test } from 'vitest'
import english from '../../main/reports/words/en.json' with { type: 'json' }
import { hasWords } from '../../main/reports/words.ts'
import { HAND_ORDERS } from '../../protocols/sections/for-each/keys.ts'
import {
  CHANGE_CAUTIONS,
  CHANGE_SENTENCES,
  MISSING,
  NORM_CAUTIONS,
  OTHER_HAND,
} from '../../protocols/scoring/reasons.ts'

const keys = Object.keys(english)

const groups = {
  missing: MISSING,
  norm_caution: NORM_CAUTIONS,
  other_hand: OTHER_HAND,
  change_caution: CHANGE_CAUTIONS,
  change_sentence: CHANGE_SENTENCES,
} as const

/** Names that a message asks for. */
const argumentsOf = (message: string): Set<string> => {
  const found = new Set<string>()
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) return node.forEach(walk)
    if (node === null || typeof node !== 'object') return
    const { type, value } = node as { type?: unknown; value?: unknown }
    if (typeof value === 'string' && typeof type === 'number' && type > 0) found.add(value)
    Object.values(node).forEach(walk)
  }
  walk(new IntlMessageFormat(message, 'en').getAst())
  return found
}

test('every code that a result can give has words, which ask for nothing that the code does not tell', () => {
  for (const [group, codes] of Object.entries(groups)) {
    for (const [code, details] of Object.entries(codes)) {
      const key = `${group}.${code}`
      expect(keys).toContain(key)
      const asked = [...argumentsOf(hasWords(key) ? english[key] : '')]
      expect(asked.filter((name) => !(details as readonly string[]).includes(name))).toEqual([])
    }
  }
})

test('every key is used: by name in the source, or as one of a group that is put together', () => {
  const at = join(import.meta.dirname, '../../main/reports')
  const source = readdirSync(at, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(at, name), 'utf8'))
    .join('\n')
  const together = [...source.matchAll(/`([a-z_]+\.(?:[a-z_]+\.)?)\$\{/g)].map((found) => found[1] ?? '')
  const grouped = [...together, ...Object.keys(groups).map((group) => `${group}.`)]
  const unused = keys.filter(
    (key) => !source.includes(`'${key}'`) && !grouped.some((group) => key.startsWith(group)),
  )
  expect(unused).toEqual([])
})

test('every order that a protocol, or the program by itself, can decide the first hand by has words', () => {
  for (const order of [...HAND_ORDERS, 'used-now-first', 'only-hand'])
    expect(keys).toContain(`order.${order}`)
})
