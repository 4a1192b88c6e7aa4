import { describe, expect, it } from 'vitest'
import { isNode, lineOf, type Node, parse, screens, textOf, type Tree, walk } from './source.ts'

/** Attributes that a person reads or hears. */
const READ = new Set([
  'aria-label',
  'aria-description',
  'aria-roledescription',
  'aria-valuetext',
  'aria-placeholder',
  'alt',
  'title',
  'placeholder',
  'label',
  'hint',
  'error',
  'detail',
  'caption',
  'lead',
  'after',
])

/** Two letters in a row make a word; signs such as arrows and dots are no sentence. */
const WORD = /\p{L}{2}/u

/** Strings that an expression may come to: literals, branches and templates, not the arguments of calls. */
function* spoken(node: unknown): Generator<Node> {
  if (!isNode(node)) return
  if (textOf(node) !== null) yield node
  if (node.type === 'TemplateLiteral') yield node
  if (node.type === 'JSXExpressionContainer' || node.type === 'ParenthesizedExpression') {
    yield* spoken(node.expression)
  }
  if (node.type === 'ConditionalExpression') {
    yield* spoken(node.consequent)
    yield* spoken(node.alternate)
  }
  if (node.type === 'LogicalExpression' || node.type === 'BinaryExpression') {
    if (node.type === 'LogicalExpression' || node.operator === '+') {
      yield* spoken(node.left)
      yield* spoken(node.right)
    }
  }
}

function words(node: Node): string {
  if (node.type !== 'TemplateLiteral') return textOf(node) ?? ''
  const quasis = node.quasis as readonly { readonly value: { readonly raw: string } }[]
  return quasis.map(({ value }) => value.raw).join(' ')
}

/** Where a tree says something of its own instead of by key. */
function sentences(tree: Tree): string[] {
  const found: string[] = []
  const note = (node: Node, said: string) => {
    if (WORD.test(said)) found.push(`${lineOf(tree, node)}: ${said.trim()}`)
  }
  for (const node of walk(tree.program)) {
    if (node.type === 'JSXText') note(node, String(node.value))
    if (node.type === 'JSXElement' || node.type === 'JSXFragment') {
      for (const child of node.children as Node[]) {
        if (child.type === 'JSXExpressionContainer') for (const each of spoken(child)) note(each, words(each))
      }
    }
    if (node.type === 'JSXAttribute' && READ.has(String((node.name as Node).name))) {
      for (const each of spoken(node.value)) note(each, words(each))
    }
  }
  return found
}

describe('No sentence stands in a component: all come by key', () => {
  it.each([
    ['text', '<p>Start now</p>'],
    ['text in braces', "<p>{'Start now'}</p>"],
    ['a branch', "<p>{ready ? 'Start now' : null}</p>"],
    ['a template', '<p>{`Hand ${n} of two`}</p>'],
    ['an accessible name', '<button aria-label="Start now" />'],
    ['a part’s label', '<Field label="Full name" />'],
    ['a label put together', "<Field label={'Full ' + name} />"],
  ])('finds %s', (_, jsx) => {
    expect(sentences(parse('sample.tsx', `export const sample = ${jsx}`))).toHaveLength(1)
  })

  it('lets keys, signs and values pass', () => {
    const jsx =
      "<p className='a b'>{say('first.title')} · {value} <Field label={say('x.y')} kind='text' /></p>"
    expect(sentences(parse('sample.tsx', `export const sample = ${jsx}`))).toEqual([])
  })

  it('holds for every file of the screens', () => {
    expect(screens().flatMap(sentences)).toEqual([])
  })
})
