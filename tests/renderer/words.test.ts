import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { IntlMessageFormat } from 'intl-messageformat'
import { describe, expect, it } from 'vitest'
import { FAULT_CODES } from '../../main/contract/faults.ts'
import { procedures } from '../../main/contract/procedures.ts'
import { say } from '../../renderer/words/index.ts'
import { bend } from '../../renderer/words/pseudo.ts'
import { isNode, lineOf, type Node, screens, textOf, walk } from './source.ts'

const folder = join(import.meta.dirname, '../../renderer/words/en')

const texts = new Map<string, string>()
for (const file of readdirSync(folder)) {
  const area = JSON.parse(readFileSync(join(folder, file), 'utf8')) as Record<string, string>
  for (const [key, text] of Object.entries(area)) texts.set(`${file.slice(0, -'.json'.length)}.${key}`, text)
}

const areas = new Set([...texts.keys()].map((key) => key.split('.')[0]))

/** A key as the source writes it; `…${x}…` stands for whatever fits between. */
interface Use {
  readonly at: string
  readonly pattern: RegExp
  readonly written: string
}

const escape = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

function patternOf(node: Node): string | null {
  const text = textOf(node)
  if (text !== null) return escape(text)
  if (node.type !== 'TemplateLiteral') return null
  const quasis = node.quasis as readonly { readonly value: { readonly cooked: string } }[]
  return quasis.map(({ value }) => escape(value.cooked)).join('.+')
}

/** Every string of the source that begins with an area's name and a dot, calls of the contract left out. */
function uses(): Use[] {
  return screens().flatMap((tree) =>
    [...walk(tree.program)].flatMap((node) => {
      const pattern = patternOf(node)
      if (pattern === null || !/^[a-z_]+\\\./.test(pattern)) return []
      if (!areas.has(pattern.split('\\.')[0] ?? '')) return []
      if (Object.hasOwn(procedures, textOf(node) ?? '')) return []
      return [{ at: lineOf(tree, node), pattern: new RegExp(`^${pattern}$`, 'u'), written: pattern }]
    }),
  )
}

/** Literal keys handed to `say`. */
function said(): { readonly at: string; readonly key: string }[] {
  const branches = (node: unknown): Node[] => {
    if (!isNode(node)) return []
    return node.type === 'ConditionalExpression'
      ? [...branches(node.consequent), ...branches(node.alternate)]
      : [node]
  }
  return screens().flatMap((tree) =>
    [...walk(tree.program)]
      .filter((node) => node.type === 'CallExpression' && isNode(node.callee) && node.callee.name === 'say')
      .flatMap((node) => branches((node.arguments as unknown[])[0]))
      .flatMap((node) => {
        const key = textOf(node)
        return key === null ? [] : [{ at: lineOf(tree, node), key }]
      }),
  )
}

describe('The words of the screens are complete', () => {
  it('every text is sound ICU MessageFormat', () => {
    const broken = [...texts].filter(([, text]) => {
      try {
        new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).getAst()
        return false
      } catch {
        return true
      }
    })
    expect(broken).toEqual([])
  })

  it('every key that a screen says has a text', () => {
    expect(said().filter(({ key }) => !texts.has(key))).toEqual([])
  })

  it('every key put together in the source fits some text', () => {
    const keys = [...texts.keys()]
    const lost = uses().filter(({ pattern }) => !keys.some((key) => pattern.test(key)))
    expect(lost.map(({ at, written }) => `${at} ${written}`)).toEqual([])
  })

  it('every text is used', () => {
    const used = uses()
    // Keys that the host's codes and the keyboard's codes choose.
    const chosenByCode = /^(faults|keys)\./
    const unused = [...texts.keys()].filter(
      (key) => !chosenByCode.test(key) && !used.some(({ pattern }) => pattern.test(key)),
    )
    expect(unused).toEqual([])
  })

  it('every fault of the contract has a sentence and a mend', () => {
    const wanted = FAULT_CODES.flatMap((code) => [`faults.${code}`, `faults.${code}.mend`])
    expect(wanted.filter((key) => !texts.has(key))).toEqual([])
  })

  it('a key without a text fails instead of showing nothing', () => {
    expect(() => say('first.there_is_no_such_key')).toThrow('there_is_no_such_key')
  })
})

const bent = (text: string, values = {}) =>
  new IntlMessageFormat(bend(new IntlMessageFormat(text, 'en').getAst()), 'en').format(values)

describe('The pseudo-locale shows what bypasses the words', () => {
  it('marks letters, grows the text by a third and leaves values alone', () => {
    expect(bent('Find {name}', { name: 'Nora' })).toBe('⟦Fíñd Nora···⟧')
  })

  it('bends every branch of a plural', () => {
    const text = '{count, plural, one {one client} other {# clients}}'
    expect(bent(text, { count: 1 })).toContain('óñé çlíéñt')
    expect(bent(text, { count: 3 })).toContain('3 çlíéñtš')
  })
})
