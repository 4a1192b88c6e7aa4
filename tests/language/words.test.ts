import { describe, expect, test } from 'vitest'
import { datum, type Scope } from '../../protocols/language/expressions/index.ts'
import type { Protocol, Text } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import { casesIn } from './corpus.ts'
import { folderOf } from './folders.ts'

const sound = new Map(casesIn('sound').map(({ name, folder }) => [name, folder]))
const PROTOCOL = sound.get('many_loops.yaml')?.files.get('protocol.yaml') ?? ''

/** The protocol of a text that has no errors. */
function read(text: string, others: Readonly<Record<string, string>> = {}): Protocol {
  const { protocol, diagnostics } = readProtocol(folderOf(text, others))
  if (!protocol) throw new Error(JSON.stringify(diagnostics))
  return protocol
}

const WORDS = `language: de
for: ring_board
texts:
  title: Ringbrett
  rings.near_thick.say: Dicker Ring auf den nahen Stift.
`

/** The text of the step `explain`, which is taken from a ring. */
function explain(protocol: Protocol): Text {
  const find = (nodes: Protocol['steps']): Text | null => {
    for (const node of nodes) {
      if (node.node === 'step' && node.name === 'explain') return node.text
      const inner = node.node === 'section' ? find(node.steps) : null
      if (inner) return inner
    }
    return null
  }
  const text = find(protocol.steps)
  if (!text) throw new Error('the protocol explains')
  return text
}

const ring = (id: string, say: string): Scope => ({
  read: (name) =>
    name === 'ring' ? { is: 'record', fields: { id: datum.text(id), say: datum.text(say) } } : null,
})

test('what a wording lacks comes in its language at large, else in the protocol’s own words', () => {
  const swiss = 'language: de-CH\nfor: ring_board\ntexts:\n  title: Ringbrätt\n'
  const { protocol, diagnostics } = readProtocol(
    folderOf(PROTOCOL, { 'words/de.yaml': WORDS, 'words/swiss.yaml': swiss }),
  )
  if (!protocol) throw new Error(JSON.stringify(diagnostics))
  const say = (key: string) => textOf(protocol, wordingFor(protocol, 'swiss'), { key })
  expect(say('title')).toBe('Ringbrätt')
  expect(say('rings.near_thick.say')).toBe('Dicker Ring auf den nahen Stift.')
  expect(say('about.suits')).toBe('Adults who can hold a ring.')
})

test('a file in the protocol’s own language may hold a few texts only, such as licensed words', () => {
  const licensed = 'language: en\nfor: ring_board\ntexts:\n  title: The Ring Board\n'
  const { protocol, diagnostics } = readProtocol(folderOf(PROTOCOL, { 'words/licensed.yaml': licensed }))
  expect(diagnostics).toEqual([])
  expect(protocol && textOf(protocol, wordingFor(protocol, 'licensed'), { key: 'title' })).toBe(
    'The Ring Board',
  )
})

describe('a protocol is read in the words of one wording', () => {
  const protocol = read(PROTOCOL, { 'words/de.yaml': WORDS })
  const german = wordingFor(protocol, 'de')
  const own = wordingFor(protocol, null)

  test('a text comes in the language asked for, or in the protocol’s own words where it has none', () => {
    expect(textOf(protocol, german, protocol.title)).toBe('Ringbrett')
    expect(textOf(protocol, own, protocol.title)).toBe('Ring board')
    expect(textOf(protocol, german, protocol.about.suits)).toBe('Adults who can hold a ring.')
  })

  test('a wording that is gone gives way to the protocol’s own', () => {
    expect(wordingFor(protocol, 'fr')).toBe(own)
  })

  test('words of a list’s item are picked at the place, and translated by its id', () => {
    const scope = ring('near_thick', 'Thick ring to the near peg.')
    expect(textOf(protocol, own, explain(protocol), scope)).toBe('Thick ring to the near peg.')
    expect(textOf(protocol, german, explain(protocol), scope)).toBe('Dicker Ring auf den nahen Stift.')
    const other = ring('near_thin', 'Thin ring to the near peg.')
    expect(textOf(protocol, german, explain(protocol), other)).toBe('Thin ring to the near peg.')
  })

  test('without a place there is nothing to pick from', () => {
    expect(textOf(protocol, own, explain(protocol))).toBe('…')
  })
})

describe('names in braces', () => {
  const protocol = read(sound.get('icu_words.yaml')?.files.get('protocol.yaml') ?? '')
  const own = wordingFor(protocol, null)
  const say = (scope: Scope | null) => textOf(protocol, own, { key: 'explain.text' }, scope)

  test('are filled from the place', () => {
    const hand: Scope = {
      read: (name) => (name === 'hand' ? { is: 'record', fields: { id: datum.text('left') } } : null),
    }
    expect(say(hand)).toBe('Put the rings on with your left hand, { is a brace.')
  })

  test('never turn into an error where the place has no value', () => {
    expect(say({ read: () => null })).toBe('Put the rings on with your left hand, { is a brace.')
    expect(say(null)).toContain('Put the rings on')
  })
})

test('the built-in void reasons have words in every protocol, and the author’s own where they are given', () => {
  const protocol = read(sound.get('german.yaml')?.files.get('protocol.yaml') ?? '')
  const own = wordingFor(protocol, null)
  const reasons = protocol.happenings.filter(({ builtIn }) => builtIn)
  expect(reasons.map(({ name }) => name).toSorted()).toEqual(['interruption', 'not_ready', 'timing_mistake'])
  expect(reasons.map(({ seen }) => textOf(protocol, own, seen))).toContain('Unterbrochen.')
})
