/** The syntax tree of a module as plain nodes with the places of their text. */
import { parseSync } from 'vite'

export interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [key: string]: unknown
}

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'

export const nodeAt = (node: Node, key: string): Node | undefined => {
  const value = node[key]
  return isNode(value) ? value : undefined
}

export const nodesAt = (node: Node, key: string): readonly Node[] => {
  const value = node[key]
  return Array.isArray(value) ? value.filter(isNode) : []
}

/** The tree of one TypeScript module; throws for text that is none. */
export function treeOf(text: string): Node {
  const { program, errors } = parseSync('module.ts', text)
  const [error] = errors
  if (error) throw new Error(error.message)
  const tree: unknown = program
  if (!isNode(tree)) throw new Error('The parser gave no tree.')
  return tree
}

/** Parts that only the type checker reads, and names that are no values. */
const NO_VALUES = new Set(['typeAnnotation', 'returnType', 'typeParameters', 'typeArguments', 'source'])
/** TypeScript's own wrappings of a value; every other of its nodes is a type. */
const WRAPPINGS = new Set(['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression'])
const APART = new Set(['ImportDeclaration', 'ExportAllDeclaration'])

/** The parts of a node that are worked out when the program runs. */
export function partsOf(node: Node): readonly Node[] {
  if (APART.has(node.type)) return []
  return Object.entries(node)
    .filter(([key]) => !NO_VALUES.has(key) && !(key === 'key' && node.computed !== true))
    .flatMap(([, value]) => (Array.isArray(value) ? value : [value]))
    .filter(isNode)
    .filter(({ type }) => !type.startsWith('TS') || WRAPPINGS.has(type))
}
