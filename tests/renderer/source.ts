/** The screens' source as trees, and what of it a person would read. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { parseSync } from 'vite'

const root = join(import.meta.dirname, '../..')

export interface Tree {
  readonly file: string
  readonly text: string
  readonly program: unknown
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
}

export function parse(file: string, text: string): Tree {
  const { program, errors } = parseSync(file, text)
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`)
  return { file, text, program }
}

/** Every component and helper of the screens. */
export function screens(): Tree[] {
  return filesIn(join(root, 'renderer')).map((path) =>
    parse(relative(root, path), readFileSync(path, 'utf8')),
  )
}

export type Node = { readonly type: string } & Readonly<Record<string, unknown>>

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

/** Every node of a tree, outermost first. */
export function* walk(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const each of value) yield* walk(each)
  else if (isNode(value)) {
    yield value
    for (const child of Object.values(value)) yield* walk(child)
  }
}

export const textOf = (node: unknown): string | null =>
  isNode(node) && node.type === 'Literal' && typeof node.value === 'string' ? node.value : null

export function lineOf({ file, text }: Tree, node: Node): string {
  return `${file}:${text.slice(0, Number(node.start)).split('\n').length}`
}
