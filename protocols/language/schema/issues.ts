/** What the schema library finds, as problems at the node that has to change. */
import type { z } from 'zod'
import type { Problem, Range } from '../diagnostics.ts'
import { nearest } from '../expressions/nearest.ts'
import { deepest, entryOf, hasBroken, type Path, type Tree } from '../reader/tree.ts'
import { NODE_SCHEMAS } from './kinds.ts'
import { schemaProblem } from './problems.ts'
import { keysAt } from './known-keys.ts'
import { NAME } from './shapes.ts'
import { offer } from './suggest.ts'

type Issue = z.core.$ZodIssue

/** Problems of `tree` against `schema`; empty when it fits. Places already reported are passed over. */
export function shapeProblems(schema: z.ZodType, tree: Tree, value: unknown): readonly Problem[] {
  const result = schema.safeParse(value, { reportInput: true })
  if (result.success) return []
  const problems: Problem[] = []
  for (const issue of result.error.issues) {
    problems.push(...problemsOf({ schema, tree, path: issue.path as Path, issue }))
  }
  return problems
}

interface Finding {
  readonly schema: z.ZodType
  readonly tree: Tree
  /** From the tree's root to what the issue is about. */
  readonly path: Path
  readonly issue: Issue
}

function problemsOf(finding: Finding): readonly Problem[] {
  const { tree, path, issue } = finding
  const { node, taken } = deepest(tree, path)
  if (node.is === 'broken') return []
  if (taken < path.length) {
    return isMissing(node, path, taken) && !isMisspelt(finding, node) ? [missing(finding, node)] : []
  }
  if (issue.code === 'unrecognized_keys') return unknownKeys(finding, issue.keys)
  if (issue.code === 'invalid_key')
    return unknownKeys({ ...finding, path: path.slice(0, -1) }, [String(path.at(-1))])
  if (node.is === 'scalar' && node.value === null && typeof path.at(-1) === 'string')
    return [empty(finding, node)]
  if (issue.code === 'invalid_union') return unionProblems(finding, node, issue)
  if (issue.code === 'invalid_value') {
    const values = issue.values.map(String)
    return [schemaProblem('not_an_option', node.at, shown(node), offer(shown(node), values, 'words'))]
  }
  if (issue.code === 'invalid_format' || issue.code === 'custom') {
    return [schemaProblem('wrong_form', node.at, shown(node), expected(issue))]
  }
  if (issue.code === 'too_small' || issue.code === 'too_big') return [size(node, issue)]
  return [wrongType(node, expected(issue))]
}

function isMissing(node: Tree, path: Path, taken: number): boolean {
  return taken === path.length - 1 && node.is === 'map' && typeof path[taken] === 'string'
}

/** Whether an unknown key beside it is most likely the one that is missing: that one is told already. */
function isMisspelt({ schema, path }: Finding, node: Tree): boolean {
  const known = keysAt(schema, path.slice(0, -1))
  if (node.is !== 'map') return false
  const free = known.filter((key) => !entryOf(node, key))
  return node.entries.some(({ key }) => !known.includes(key) && nearest(key, free) === path.at(-1))
}

function missing({ schema, path, issue }: Finding, node: Tree): Problem {
  const key = String(path.at(-1))
  return schemaProblem(
    'missing_key',
    headOf(node),
    key,
    whereOf(path.slice(0, -1), node),
    `${key}: ${phrase(schema, path, issue)}`,
  )
}

function empty({ schema, path, issue }: Finding, node: Tree): Problem {
  return schemaProblem('empty_value', node.at, String(path.at(-1) ?? ''), phrase(schema, path, issue))
}

function unknownKeys({ schema, tree, path }: Finding, keys: readonly string[]): readonly Problem[] {
  const map = deepest(tree, path).node
  const known = keysAt(schema, path)
  const free = known.filter((name) => !entryOf(map, name))
  const places = new Map(map.is === 'map' ? map.entries.map(({ key, keyAt }) => [key, keyAt]) : [])
  return keys.flatMap((key) => {
    const at = places.get(key)
    if (!at) return []
    const meant = nearest(key, free)
    const mend = cutOff(map, key) ?? (meant ? `Did you mean "${meant}"?` : `Known here: ${known.join(', ')}.`)
    return [schemaProblem('unknown_key', at, key, whereOf(path, map), mend)]
  })
}

/** Within braces a comma and a blank end a text: what follows then looks like a key without a value. */
function cutOff(map: Tree, key: string): string | null {
  if (map.is !== 'map' || NAME.test(key.replaceAll('-', '_'))) return null
  const index = map.entries.findIndex((entry) => entry.key === key)
  const [before, entry] = [map.entries[index - 1], map.entries[index]]
  const isBare = entry?.value.is === 'scalar' && entry.value.value === null && entry.value.written === ''
  const follows = before?.value.is === 'scalar' && entry?.keyAt.start === before.value.at.end + ', '.length
  return isBare && follows ? 'Put the text before it in quotes: the comma ends it here.' : null
}

/**
 * Of several shapes that a value may have, the one it was meant to have is the one whose outside fits and
 * whose inside is wrong: its own problems say more than "none of these".
 */
function unionProblems(
  finding: Finding,
  node: Tree,
  issue: z.core.$ZodIssueInvalidUnion,
): readonly Problem[] {
  const outside = (branch: readonly Issue[]): number =>
    branch.filter(({ path }) => path.length === 0 || deepest(node, path as Path).taken < path.length).length
  const fitting = issue.errors.filter(
    (branch) => branch.length > 0 && branch.every((each) => fitsOutside(each)),
  )
  const inner = fitting.toSorted((a, b) => outside(a) - outside(b))[0]
  if (hasBroken(node)) return []
  if (!inner) {
    const words = issue.errors.flat().find((each) => each.code === 'invalid_value' && each.path.length === 0)
    const isWord = node.is === 'scalar' && typeof node.value === 'string'
    return words && isWord ? problemsOf({ ...finding, issue: words }) : [wrongType(node, expected(issue))]
  }
  return inner.flatMap((each) =>
    problemsOf({ ...finding, path: [...finding.path, ...(each.path as Path)], issue: each }),
  )
}

function fitsOutside(issue: Issue): boolean {
  return (
    issue.path.length > 0 ||
    ['unrecognized_keys', 'too_small', 'too_big', 'invalid_union'].includes(issue.code)
  )
}

const COUNTED: Readonly<Record<string, readonly [string, string]>> = {
  array: ['entry', 'entries'],
  string: ['character', 'characters'],
}

function size(node: Tree, issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig): Problem {
  const [limit, word] = issue.code === 'too_small' ? [issue.minimum, 'at least'] : [issue.maximum, 'at most']
  if (['number', 'int', 'bigint'].includes(issue.origin)) {
    return schemaProblem('out_of_range', node.at, shown(node), `${word} ${limit}`)
  }
  const [one, many] = COUNTED[issue.origin] ?? ['key', 'keys']
  const short = issue.code === 'too_small'
  const mend = short ? 'Add what is missing.' : 'Shorten it, or split it.'
  return schemaProblem(
    'wrong_length',
    node.at,
    short ? 'too short' : 'too long',
    `${word} ${Number(limit) === 1 ? `one ${one}` : `${limit} ${many}`}`,
    mend,
  )
}

const SWITCHES = new Set(['yes', 'no', 'on', 'off', 'y', 'n'])

function wrongType(node: Tree, wanted: string): Problem {
  return schemaProblem('wrong_type', node.at, found(node), wanted, mendOf(node, wanted))
}

function mendOf(node: Tree, wanted: string): string {
  if (node.is !== 'scalar') return `Write ${wanted} instead.`
  const { value, written } = node
  if (value === null) return `Write ${wanted}, or take the empty entry away.`
  if (wanted === 'true or false' && SWITCHES.has(written.toLowerCase())) {
    return `Write ${['yes', 'on', 'y'].includes(written.toLowerCase()) ? 'true' : 'false'}.`
  }
  if (
    typeof value === 'string' &&
    /number/.test(wanted) &&
    written.trim() !== '' &&
    Number.isFinite(Number(written))
  ) {
    return 'Take the quotes away.'
  }
  if (typeof value !== 'string' && /word|name|tag/.test(wanted)) return `Put it in quotes: "${written}".`
  if (typeof value === 'string' && /number/.test(wanted) && /^\d+,\d+/.test(written)) {
    return 'Write a point, not a comma, before decimals.'
  }
  return `Write ${wanted} instead.`
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'words',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'a map of keys and values',
  record: 'a map of keys and values',
}

const DEFAULT = /^(Invalid|Too (small|big)|Unrecognized)/

function expected(issue: Issue): string {
  if (!DEFAULT.test(issue.message)) return issue.message
  if (issue.code === 'invalid_type') return TYPES[issue.expected] ?? issue.expected
  return 'something else'
}

/** What belongs behind a key that has no value. */
function phrase(schema: z.ZodType, path: Path, issue: Issue): string {
  if (issue.code === 'invalid_value') {
    return issue.values.length === 1 ? String(issue.values[0]) : `one of ${issue.values.join(', ')}`
  }
  const keys = keysAt(schema, path)
  if (keys.length > 0 && issue.code === 'invalid_type') return `a map with ${keys.join(', ')}`
  const said = expected(issue)
  return said === 'something else' ? 'a value' : said
}

function found(node: Tree): string {
  if (node.is === 'list') return 'a list'
  if (node.is === 'map') return node.entries.length === 0 ? 'an empty map' : 'a map'
  if (node.is === 'broken') return 'something unreadable'
  if (node.value === null) return 'nothing'
  if (typeof node.value === 'number') return `the number ${node.written}`
  if (typeof node.value === 'boolean') return `${node.written} (yes or no)`
  return `the text "${short(node.written)}"`
}

function shown(node: Tree): string {
  return node.is === 'scalar' ? short(node.written) : found(node)
}

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text)

/** Where to point for something that isn't there: the first key of the map that lacks it. */
function headOf(node: Tree): Range {
  const first = node.is === 'map' ? node.entries[0] : undefined
  return first ? first.keyAt : node.at
}

/** Where a key stands, in words: `in "about"`, `in timed "run"`, `at the top of the file`. */
function whereOf(path: Path, node: Tree): string {
  const last = path.at(-1)
  if (typeof last === 'string') return `in "${last}"`
  const first = node.is === 'map' ? node.entries[0] : undefined
  if (last === undefined && !NODE_SCHEMAS.has(first?.key ?? '')) return 'at the top of the file'
  const label = first?.value
  if (first && label?.is === 'scalar' && label.value !== null)
    return `in ${first.key} "${short(label.written)}"`
  return 'in this entry'
}
