/**
 * Mutants of a module: each is one small change that a test ought to notice. The operators are the customary ones of
 * mutation testing for this language (arithmetic, equality, logical, conditional, boolean, string, array and object
 * literals, blocks, unary and update operators, optional chains, arrow functions, method calls).
 */
import { isNode, type Node, nodeAt, nodesAt, partsOf, treeOf } from './tree.ts'

export interface Mutant {
  /** The name of the operator. */
  readonly operator: string
  /** The text from `start` to `end`, an expression or a block, is what is chosen anew: `instead` takes its place. */
  readonly start: number
  readonly end: number
  readonly instead: string
  readonly line: number
  readonly block: boolean
  /** Worked out once, when the module is loaded, and not within a function. */
  readonly once: boolean
}

type Change = readonly [operator: string, instead: string, host?: Node]
type Way = (node: Node, text: string, above: readonly Node[]) => readonly Change[]

const EQUALITY: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
}
const ARITHMETIC: Readonly<Record<string, readonly string[]>> = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '**': ['*'],
}
const LOGICAL: Readonly<Record<string, readonly string[]>> = { '&&': ['||'], '||': ['&&'], '??': ['&&'] }
const METHODS = new Map([
  ['some', 'every'],
  ['every', 'some'],
  ['min', 'max'],
  ['max', 'min'],
  ['startsWith', 'endsWith'],
  ['endsWith', 'startsWith'],
  ['floor', 'ceil'],
  ['ceil', 'floor'],
  ['toUpperCase', 'toLowerCase'],
  ['toLowerCase', 'toUpperCase'],
])
/** Calls that give what they were called on, or nearly: leaving one out keeps the kind of value. */
const DROPPED = new Set(['filter', 'slice', 'sort', 'toSorted', 'reverse', 'toReversed', 'trim', 'substring'])

const cut = (text: string, from: number, to: number): string => text.slice(from, to)
const part = (text: string, node: Node): string => cut(text, node.start, node.end)

/** The text of `host` with one piece of it exchanged. */
const exchanged = (text: string, host: Node, from: number, to: number, piece: string): string =>
  cut(text, host.start, from) + piece + cut(text, to, host.end)

/** A link of an optional chain can't be chosen apart from its chain, which ends early as one. */
function wholeChain(node: Node, above: readonly Node[]): Node {
  let whole = node
  for (const next of above.toReversed()) {
    const link = nodeAt(next, 'object') === whole || nodeAt(next, 'callee') === whole
    const end = next.type === 'ChainExpression' || next.type === 'TSNonNullExpression'
    if (!link && !end) break
    whole = next
  }
  return whole
}

const operatorChanged =
  (name: string, table: Readonly<Record<string, readonly string[]>>): Way =>
  (node, text) => {
    const [left, right] = [nodeAt(node, 'left'), nodeAt(node, 'right')]
    if (!left || !right) return []
    // Bracketed, as some operators can't stand beside each other.
    return (table[String(node.operator)] ?? []).map((other) => [
      name,
      `(${part(text, left)}) ${other} (${part(text, right)})`,
    ])
  }

const BINARY: Way = (node, text, above) => {
  if (node.operator === '+' && [nodeAt(node, 'left'), nodeAt(node, 'right')].some(isText)) return []
  const arithmetic = operatorChanged('arithmetic', ARITHMETIC)(node, text, above)
  const equality = operatorChanged('equality', EQUALITY)(node, text, above)
  if (equality.length === 0) return arithmetic
  return [...equality, ['conditional', 'true'], ['conditional', 'false']]
}

const isText = (node: Node | undefined): boolean =>
  node?.type === 'TemplateLiteral' || (node?.type === 'Literal' && typeof node.value === 'string')

const CALL: Way = (node, text, above) => {
  const callee = nodeAt(node, 'callee')
  const property = callee && nodeAt(callee, 'property')
  const object = callee && nodeAt(callee, 'object')
  if (!callee || !property || !object || callee.computed === true) return []
  const name = String(property.name)
  const host = wholeChain(node, above)
  const other = METHODS.get(name)
  if (other) return [['method', exchanged(text, host, property.start, property.end, other), host]]
  if (!DROPPED.has(name)) return []
  return [['method', exchanged(text, host, object.end, node.end, ''), host]]
}

const OPTIONAL: Way = (node, text, above) => {
  const from = nodeAt(node, 'object') ?? nodeAt(node, 'callee')
  if (node.optional !== true || !from) return []
  const at = text.indexOf('?.', from.end)
  const host = wholeChain(node, above)
  const piece = node.type === 'MemberExpression' && node.computed !== true ? '.' : ''
  return [['optional chain', exchanged(text, host, at, at + 2, piece), host]]
}

/** The test of a branch or a loop, where it isn't a comparison, which is changed as one. */
const CONDITION: Way = (node) => {
  const test = nodeAt(node, 'test')
  if (!test || (test.type === 'BinaryExpression' && String(test.operator) in EQUALITY)) return []
  const never: Change = ['conditional', 'false', test]
  return /^(?:While|DoWhile|For)/.test(node.type) ? [never] : [['conditional', 'true', test], never]
}

const BLOCK: Way = (node, _text, above) => {
  const over = above.at(-2)
  if (nodesAt(node, 'body').length === 0 || over?.kind === 'constructor') return []
  return [['block', '{}']]
}

const ARROW: Way = (node) => {
  const body = nodeAt(node, 'body')
  if (!body || body.type === 'BlockStatement') return []
  const nothing = body.type === 'Identifier' && body.name === 'undefined'
  return nothing ? [] : [['arrow function', 'undefined', body]]
}

const LITERAL: Way = ({ value }, _text, above) => {
  if (typeof value === 'boolean') return [['boolean', String(!value)]]
  if (typeof value !== 'string' || above.at(-1)?.type === 'ExpressionStatement') return []
  return [['string', value === '' ? "'mutated'" : "''"]]
}

const TEMPLATE: Way = (node, text, above) =>
  above.at(-1)?.type === 'TaggedTemplateExpression' || part(text, node) === '``' ? [] : [['string', "''"]]

const UNARY: Way = (node, text) => {
  const argument = nodeAt(node, 'argument')
  if (!argument || !['!', '-'].includes(String(node.operator))) return []
  return [[node.operator === '!' ? 'boolean' : 'unary', part(text, argument)]]
}

const UPDATE: Way = (node, text) => [
  ['update', part(text, node).replace(/\+\+|--/, (found) => (found === '++' ? '--' : '++'))],
]

const ASSIGNED: Readonly<Record<string, string>> = { '+=': '-=', '-=': '+=', '*=': '/=', '/=': '*=' }
const ASSIGNMENT: Way = (node, text) => {
  const other = ASSIGNED[String(node.operator)]
  const [left, right] = [nodeAt(node, 'left'), nodeAt(node, 'right')]
  if (!other || !left || !right || isText(right)) return []
  return [['assignment', `${part(text, left)} ${other} ${part(text, right)}`]]
}

const WAYS: Readonly<Record<string, readonly Way[]>> = {
  BinaryExpression: [BINARY],
  LogicalExpression: [operatorChanged('logical', LOGICAL)],
  UnaryExpression: [UNARY],
  UpdateExpression: [UPDATE],
  AssignmentExpression: [ASSIGNMENT],
  CallExpression: [CALL, OPTIONAL],
  MemberExpression: [OPTIONAL],
  IfStatement: [CONDITION],
  ConditionalExpression: [CONDITION],
  WhileStatement: [CONDITION],
  DoWhileStatement: [CONDITION],
  ForStatement: [CONDITION],
  BlockStatement: [BLOCK],
  ArrowFunctionExpression: [ARROW],
  ArrayExpression: [(node) => (nodesAt(node, 'elements').length === 0 ? [] : [['array', '[]']])],
  ObjectExpression: [(node) => (nodesAt(node, 'properties').length === 0 ? [] : [['object', '({})']])],
  Literal: [LITERAL],
  TemplateLiteral: [TEMPLATE],
}

const isFunction = ({ type }: Node): boolean => /Function/.test(type)

/** All mutants of one module's text, in the order of their places. */
export function mutantsOf(text: string): readonly Mutant[] {
  const found: Mutant[] = []
  const walk = (node: Node, above: readonly Node[]): void => {
    for (const way of WAYS[node.type] ?? []) {
      for (const [operator, instead, host = node] of way(node, text, above)) {
        found.push({
          operator,
          start: host.start,
          end: host.end,
          instead,
          line: text.slice(0, node.start).split('\n').length,
          block: host.type === 'BlockStatement',
          once: ![...above, node].some(isFunction),
        })
      }
    }
    for (const inner of partsOf(node)) walk(inner, [...above, node])
  }
  walk(treeOf(text), [])
  return found.filter(({ start, end, instead }) => instead !== text.slice(start, end))
}

/** Where an expression statement begins with an expression that is chosen, a bracket would continue the line before. */
export function statementStarts(text: string): ReadonlySet<number> {
  const starts = new Set<number>()
  const walk = (node: Node): void => {
    if (node.type === 'ExpressionStatement') starts.add(node.start)
    for (const value of Object.values(node).flat()) if (isNode(value)) walk(value)
  }
  walk(treeOf(text))
  return starts
}
