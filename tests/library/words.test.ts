import { describe, expect, test } from 'vitest'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import type { Node, Protocol, Section, Step, Text } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import { scopeAt } from '../../protocols/scoring/scope.ts'
import { folderOf, TESTS } from './folders.ts'

function read(name: string): Protocol {
  const { protocol } = readProtocol(folderOf(name))
  if (!protocol) throw new Error(`${name} can't be read`)
  return protocol
}

interface Spot {
  readonly step: Step
  readonly loops: readonly Section[]
}

function spots(nodes: readonly Node[], loops: readonly Section[] = []): readonly Spot[] {
  return nodes.flatMap((node) => {
    if (node.node === 'step') return [{ step: node, loops }]
    return node.node === 'section' ? spots(node.steps, [...loops, node]) : []
  })
}

/** Words of a step's text in one hand, under the usual conditions, some of them set otherwise. */
function said(
  protocol: Protocol,
  text: Text,
  loops: readonly Section[],
  side: string,
  conditions: Readonly<Record<string, string>> = {},
): string {
  const usual = Object.fromEntries(
    protocol.conditions.flatMap(({ name, usual: each }) => (each ? [[name, each]] : [])),
  )
  const standing = {
    protocol,
    trials: [],
    facts: NOTHING_KNOWN,
    conditions: { ...usual, ...conditions },
    orders: [],
  }
  const passes = loops.flatMap(({ name, fields }): [string, string | number][] => {
    if (fields.in === 'hands') return [[name, side]]
    if (typeof fields.in === 'string') return [[name, protocol.lists[fields.in]?.[0]?.id ?? '']]
    if (typeof fields.over === 'string')
      return [[String(fields.level), protocol.lists[fields.over]?.[0]?.id ?? '']]
    return fields.times === undefined ? [] : [[name, 1]]
  })
  const place = Object.fromEntries(passes)
  return textOf(protocol, wordingFor(protocol, null), text, scopeAt(standing, place))
}

describe.each(TESTS)('%s', (name) => {
  const protocol = read(name)
  const texts = spots(protocol.steps).flatMap(({ step, loops }) =>
    [...(step.text ? [step.text] : []), ...step.maySay].map((text) => ({ text, loops })),
  )

  test('every step has words, and none of them lacks anything in either hand', () => {
    expect(spots(protocol.steps).filter(({ step }) => step.text === null)).toEqual([])
    const words = ['right', 'left'].flatMap((side) =>
      texts.map(({ text, loops }) => said(protocol, text, loops, side)),
    )
    expect(words.filter((each) => /[{}…]/.test(each) || each.includes('tested hand'))).toEqual([])
  })

  test('the hand under test is named where it is set up', () => {
    const [first] = spots(protocol.steps).filter(({ loops }) =>
      loops.some(({ fields }) => fields.in === 'hands'),
    )
    const text = first?.step.text
    if (!first || !text) throw new Error('no set-up in a loop')
    expect(said(protocol, text, first.loops, 'right')).toMatch(/\bthe right hand\b/)
    expect(said(protocol, text, first.loops, 'left')).toMatch(/\bthe left hand\b/)
  })

  test('words for the client fit into one breath or two: none longer than 120 words', () => {
    const instructed = spots(protocol.steps).filter(({ step }) => step.kind === 'instruct')
    const lengths = instructed.map(({ step, loops }) =>
      step.text ? said(protocol, step.text, loops, 'left').split(/\s+/).length : 0,
    )
    expect(Math.max(...lengths)).toBeLessThan(120)
  })
})

test('grip strength: the script of encouragement follows the clinic’s choice', () => {
  const protocol = read('grip_strength')
  const found = spots(protocol.steps).find(({ step }) => step.name === 'squeeze')
  const { step: squeeze, loops = [] } = found ?? {}
  const [cheer] = squeeze?.maySay ?? []
  if (!squeeze?.text || !cheer) throw new Error('no words at the squeeze')
  expect(said(protocol, cheer, loops, 'left')).toContain('keep on')
  expect(said(protocol, cheer, loops, 'left', { encouragement: 'none' })).not.toContain('keep on')
  expect(said(protocol, squeeze.text, loops, 'left', { encouragement: 'none' })).toContain('say nothing more')
})
