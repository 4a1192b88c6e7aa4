/**
 * Text to tree, by YAML 1.2 with its core schema (yaml.org/spec/1.2.2, chapter 10.3): `no` and `on` are texts,
 * `010` is ten, `0o14` twelve, `12:30` and dates are texts. The only module that knows the YAML library.
 */
import { Composer, CST, isAlias, isMap, isScalar, isSeq, type Node, Parser, type YAMLError } from 'yaml'
import type { Problem, Range } from '../diagnostics.ts'
import { Lines } from '../positions.ts'
import { suspectCharacters } from './characters.ts'
import { unclosedBefore } from './unclosed.ts'
import { DEEPEST, MOST_CHARACTERS, MOST_NODES } from './limits.ts'
import { type ReaderCode, readerProblem } from './problems.ts'
import { syntaxSentence } from './syntax-sentences.ts'
import type { Entry, ScalarStyle, Tree } from './tree.ts'

export interface Reading {
  /** Null where nothing can be made of the text. */
  readonly tree: Tree | null
  readonly problems: readonly Problem[]
}

/** Reads one file. Never throws; whatever is wrong is a problem with its place. */
export function readYaml(file: string, text: string): Reading {
  if (text.length > MOST_CHARACTERS) {
    const at = { file, start: 0, end: 0 }
    return { tree: null, problems: [readerProblem('file_too_large', at, text.length, MOST_CHARACTERS)] }
  }
  const problems = [...suspectCharacters(file, text)]
  const tokens = [...new Parser().parse(text)]
  const bound = firstBeyondBounds(file, tokens)
  if (bound) return { tree: null, problems: [...problems, bound] }
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, strict: true })
  const [document, second] = [...composer.compose(tokens, true, text.length)]
  const syntax = document ? [...document.errors, ...document.warnings] : []
  const first = syntax.sort((a, b) => a.pos[0] - b.pos[0]).find(({ code }) => code !== 'TAG_RESOLVE_FAILED')
  if (first) {
    return { tree: null, problems: [...problems, syntaxProblem(file, text, tokens, first)] }
  }
  if (second) {
    const start = second.range[0]
    problems.push(readerProblem('several_documents', { file, start, end: Math.min(start + 3, text.length) }))
  }
  if (!document?.contents || (isScalar(document.contents) && document.contents.value === null)) {
    return { tree: null, problems: [...problems, readerProblem('empty_file', { file, start: 0, end: 0 })] }
  }
  const growing = new Growing(file, text)
  const tree = growing.tree(document.contents as Node, document.contents.range?.[0] ?? 0)
  if (tree.is !== 'map') {
    if (tree.is !== 'broken') {
      const what = tree.is === 'list' ? 'a list' : 'a single value'
      growing.problems.push(readerProblem('not_a_map', tree.at, what))
    }
    return { tree: null, problems: [...problems, ...growing.problems] }
  }
  return { tree, problems: [...problems, ...growing.problems] }
}

/** Walks the parser's tokens without recursion, so that a file of brackets can't exhaust the stack. */
function firstBeyondBounds(file: string, tokens: readonly CST.Token[]): Problem | null {
  let nodes = 0
  const open: { readonly token: CST.Token; readonly depth: number }[] = []
  for (const token of tokens) open.push({ token, depth: 0 })
  open.reverse()
  for (let next = open.pop(); next; next = open.pop()) {
    const { token, depth } = next
    const at = { file, start: token.offset, end: token.offset + 1 }
    if (depth > DEEPEST) return readerProblem('too_deep', at, DEEPEST)
    if (++nodes > MOST_NODES) return readerProblem('too_many_nodes', at, MOST_NODES)
    if (token.type === 'document' && token.value) open.push({ token: token.value, depth })
    if (!CST.isCollection(token)) continue
    for (const item of token.items.toReversed()) {
      if (item.value) open.push({ token: item.value, depth: depth + 1 })
      if (item.key) open.push({ token: item.key, depth: depth + 1 })
    }
  }
  return null
}

function syntaxProblem(file: string, text: string, tokens: readonly CST.Token[], error: YAMLError): Problem {
  const unclosed = unclosedBefore(tokens, error.pos[1])
  if (unclosed) {
    const at = { file, start: unclosed.start, end: unclosed.start + 1 }
    return readerProblem('yaml_syntax', at, `This ${unclosed.what} is never closed.`, unclosed.mend)
  }
  const start = Math.min(error.pos[0], text.length)
  const end = Math.max(start, Math.min(error.pos[1], text.length))
  const { message, mend } = syntaxSentence(error.code, error.message)
  return readerProblem('yaml_syntax', { file, start, end }, message, mend)
}

const STYLES: Readonly<Record<string, ScalarStyle>> = {
  PLAIN: 'plain',
  QUOTE_SINGLE: 'single',
  QUOTE_DOUBLE: 'double',
  BLOCK_FOLDED: 'folded',
  BLOCK_LITERAL: 'literal',
}

/** Turns the library's nodes into ours and gathers what is refused on the way. */
class Growing {
  readonly problems: Problem[] = []
  readonly #file: string
  readonly #lines: Lines

  constructor(file: string, text: string) {
    this.#file = file
    this.#lines = new Lines(text)
  }

  /** `before` is where a value that isn't written (`key:`) would stand. */
  tree(node: Node | null | undefined, before: number): Tree {
    if (!node)
      return { is: 'scalar', value: null, written: '', style: 'plain', at: this.#range(before, before) }
    const at = this.#rangeOf(node, before)
    if (isAlias(node)) return this.#refuse('alias', at, node.source)
    if (node.anchor) this.problems.push(readerProblem('anchor', at, node.anchor))
    if (node.tag) return this.#refuse('custom_tag', at, node.tag)
    if (isMap(node))
      return { is: 'map', at, entries: this.#entries(node.items as readonly LibraryPair[], at) }
    if (isSeq(node)) {
      return { is: 'list', at, items: node.items.map((item) => this.tree(item as Node | null, at.start)) }
    }
    return isScalar(node) ? this.#scalar(node, at) : { is: 'broken', at }
  }

  #scalar(node: { value: unknown; source?: string; type?: string }, at: Range): Tree {
    const written = node.source ?? ''
    const style = STYLES[node.type ?? 'PLAIN'] ?? 'plain'
    const { value } = node
    if (typeof value === 'number' && !Number.isFinite(value)) return this.#refuse('not_finite', at, written)
    if (typeof value === 'number' && losesDigits(written, value)) {
      return this.#refuse('digits_lost', at, written, value)
    }
    if (typeof value === 'number' || typeof value === 'boolean' || value === null) {
      return { is: 'scalar', value, written, style, at }
    }
    return { is: 'scalar', value: String(value), written: String(value), style, at }
  }

  #entries(items: readonly LibraryPair[], around: Range): readonly Entry[] {
    const seen = new Map<string, Range>()
    const entries: Entry[] = []
    for (const { key: keyNode, value } of items) {
      const key = this.#key(keyNode, around)
      if (!key) continue
      const earlier = seen.get(key.key)
      if (earlier) {
        const { line } = this.#lines.at(earlier.start)
        this.problems.push(readerProblem('duplicate_key', key.keyAt, key.key, line))
        continue
      }
      seen.set(key.key, key.keyAt)
      const grown = this.tree(value, key.keyAt.end)
      // What isn't written stands at its key, so that there is something to point at.
      const unwritten = grown.is === 'scalar' && grown.value === null && grown.written === ''
      entries.push({ ...key, value: unwritten ? { ...grown, at: key.keyAt } : grown })
    }
    return entries
  }

  #key(node: Node | null, around: Range): { readonly key: string; readonly keyAt: Range } | null {
    const keyAt = node ? this.#rangeOf(node, around.start) : around
    if (isAlias(node)) this.#refuse('alias', keyAt, node.source)
    else if (node?.tag) this.#refuse('custom_tag', keyAt, node.tag)
    else if (!isScalar(node) || node.value === null) {
      this.#refuse('key_not_text', keyAt, isMap(node) ? 'a map' : isSeq(node) ? 'a list' : 'empty')
    } else {
      const key = typeof node.value === 'string' ? node.value : (node.source ?? String(node.value))
      if (key !== '<<') return { key, keyAt }
      this.#refuse('merge_key', keyAt)
    }
    return null
  }

  #refuse(code: ReaderCode, at: Range, ...words: readonly (string | number)[]): Tree {
    this.problems.push(readerProblem(code, at, ...words))
    return { is: 'broken', at }
  }

  #rangeOf(node: Node, before: number): Range {
    return node.range ? this.#range(node.range[0], node.range[1]) : this.#range(before, before)
  }

  #range(start: number, end: number): Range {
    return { file: this.#file, start, end }
  }
}

interface LibraryPair {
  readonly key: Node | null
  readonly value: Node | null
}

/** Whole numbers beyond 2^53, and more than 17 significant digits, come back as another number. */
function losesDigits(written: string, value: number): boolean {
  if (Number.isInteger(value) && !Number.isSafeInteger(value) && !/[eE]/.test(written)) return true
  const digits = /^[+-]?(\d[\d.]*)/.exec(written)?.[1] ?? ''
  return !/^0[xo]/.test(written) && digits.replace('.', '').replace(/^0+/, '').length > 17
}
