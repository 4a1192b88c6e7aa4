import { describe, expect, test } from 'vitest'
import { NOTHING_KNOWN } from '../../protocols/client.ts'
import type { Node, Protocol, Step, Text } from '../../protocols/language/model.ts'
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
  readonly loops: readonly string[]
}

function spots(nodes: readonly Node[], loops: readonly string[] = []): readonly Spot[] {
  return nodes.flatMap((node) => {
    if (node.node === 'step') return [{ step: node, loops }]
    return node.node === 'section' ? spots(node.steps, [...loops, node.name]) : []
  })
}

/** Words of a step's text in one hand, under the usual conditions, some of them set otherwise. */
function said(
  protocol: Protocol,
  text: Text,
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
  const place = { hand: side, warming: side, round: 1, attempt: 1 }
  return textOf(protocol, wordingFor(protocol, null), text, scopeAt(standing, place))
}

describe.each(TESTS)('%s', (name) => {
  const protocol = read(name)
  const texts = spots(protocol.steps).flatMap(({ step }) => [
    ...(step.text ? [step.text] : []),
    ...step.maySay,
  ])

  test('every step has words, and none of them lacks anything in either hand', () => {
    expect(spots(protocol.steps).filter(({ step }) => step.text === null)).toEqual([])
    const words = ['right', 'left'].flatMap((side) => texts.map((text) => said(protocol, text, side)))
    expect(words.filter((each) => /[{}…]/.test(each) || each.includes('tested hand'))).toEqual([])
  })

  test('the hand under test is named where it is set up', () => {
    const [first] = spots(protocol.steps).filter(({ loops }) => loops.length > 0)
    const text = first?.step.text
    if (!text) throw new Error('no set-up in a loop')
    expect(said(protocol, text, 'right')).toMatch(/\bthe right hand\b/)
    expect(said(protocol, text, 'left')).toMatch(/\bthe left hand\b/)
  })

  test('words for the client fit into one breath or two: none longer than 120 words', () => {
    const instructed = spots(protocol.steps).filter(({ step }) => step.kind === 'instruct')
    const lengths = instructed.map(({ step }) =>
      step.text ? said(protocol, step.text, 'left').split(/\s+/).length : 0,
    )
    expect(Math.max(...lengths)).toBeLessThan(120)
  })
})

test('grip strength: the script of encouragement follows the clinic’s choice', () => {
  const protocol = read('grip_strength')
  const squeeze = spots(protocol.steps).find(({ step }) => step.name === 'squeeze')?.step
  const [cheer] = squeeze?.maySay ?? []
  if (!squeeze?.text || !cheer) throw new Error('no words at the squeeze')
  expect(said(protocol, cheer, 'left')).toContain('keep on')
  expect(said(protocol, cheer, 'left', { encouragement: 'none' })).not.toContain('keep on')
  expect(said(protocol, squeeze.text, 'left', { encouragement: 'none' })).toContain('say nothing more')
})
