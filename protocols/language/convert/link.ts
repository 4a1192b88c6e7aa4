/**
 * Names, types and units of all expressions, once everything they may read is known. What is wrong in an
 * expression is told at its very characters, through quotes and folded lines.
 */
import type { Problem } from '../diagnostics.ts'
import {
  checkExpression,
  type ExpressionProblem,
  type ExpressionProblemCode,
  parseExpression,
  type Tree as Formula,
  type ValueType,
} from '../expressions/index.ts'
import { scalarOffsets } from '../reader/scalar-offsets.ts'
import { passesOf } from '../passes.ts'
import { sectionsOf } from '../structure.ts'
import { unitOf } from '../units.ts'
import { declaredNames, type NameOf } from './names.ts'
import type { Draft, PlacedExpression, Wanted } from './draft.ts'
import { Environments } from './environment.ts'

/** Codes of problems inside expressions; their sentences are made where they are found, in `expressions`. */
export const EXPRESSION_CODES = {
  syntax: 'expression_syntax',
  too_large: 'expression_too_large',
  not_supported: 'expression_not_supported',
  unknown_name: 'expression_unknown_name',
  unknown_field: 'expression_unknown_field',
  unknown_function: 'expression_unknown_function',
  wrong_arguments: 'expression_wrong_arguments',
  wrong_type: 'expression_wrong_type',
  unit_unknown: 'expression_unit_unknown',
  unit_mismatch: 'expression_unit_mismatch',
  never_equal: 'expression_never_equal',
} as const satisfies Readonly<Record<ExpressionProblemCode, string>>

const IN_FORMULAS: readonly NameOf[] = ['step', 'section', 'loop', 'condition']

/** Fills the holes of all expressions that are sound, and gives the problems of the others. */
export function linkExpressions(draft: Draft): readonly Problem[] {
  const linking = new Linking(draft)
  for (const placed of scoresFirst(draft)) linking.link(placed)
  return linking.problems
}

class Linking {
  readonly problems: Problem[] = []
  readonly #draft: Draft
  readonly #environments: Environments
  /** Declared, but nothing is known of their type: what reads them can't be judged. */
  readonly #unknowable: Set<string>

  constructor(draft: Draft) {
    this.#draft = draft
    this.#environments = new Environments(draft)
    const known = this.#environments.at([], [])
    this.#unknowable = new Set(
      declaredNames(draft.tree)
        .filter(({ name, of, tree }) => {
          if (of === 'score' || of === 'perhaps') return true
          return IN_FORMULAS.includes(of) && draft.isBroken(tree) && !Object.hasOwn(known, name)
        })
        .map(({ name }) => name),
    )
    for (const { node } of sectionsOf(draft)) {
      const { loop, list } = passesOf(node, draft.draws) ?? { loop: node.name, list: null }
      if (list !== null && list !== 'hands' && draft.lists[list] === undefined) {
        this.#unknowable.add(loop).add(node.name)
      }
    }
    for (const [name, type] of Object.entries(known)) if (hasUnknownUnit(type)) this.#unknowable.add(name)
  }

  link(placed: PlacedExpression): void {
    const { hole, node, around, each, wanted } = placed
    const parsed = parseExpression(hole.source)
    if (!parsed.tree) {
      this.problems.push(...parsed.problems.map((problem) => this.#problem(placed, problem)))
      return
    }
    if (this.#draft.isBroken(node) || [...namesIn(parsed.tree)].some((name) => this.#unknowable.has(name)))
      return
    const environment = this.#environments.at(around, each)
    const checked = checkExpression(hole.source, parsed.tree, environment, expectedOf(wanted))
    if (checked.expression === null) {
      this.problems.push(...checked.problems.map((problem) => this.#problem(placed, problem)))
      return
    }
    Object.assign(hole, checked.expression)
    const score = this.#draft.scores.find(({ value }) => value === hole)
    if (score) {
      this.#unknowable.delete(score.name)
      this.#environments.know(score, hole.type)
    }
  }

  #problem({ node }: PlacedExpression, { code, start, end, message, mend }: ExpressionProblem): Problem {
    const text = this.#draft.folder.files.get(node.at.file) ?? ''
    const offsets = scalarOffsets(text, node)
    const from = offsets[start] ?? node.at.start
    const until = offsets[end] ?? node.at.end
    const at = { file: node.at.file, start: from, end: Math.max(from, until) }
    return { code: EXPRESSION_CODES[code], severity: 'error', at, message, mend }
  }
}

/** A unit that is none is told where it is written: formulas over it can't be judged. */
function hasUnknownUnit(type: ValueType): boolean {
  if (type.is === 'number') return type.unit !== null && unitOf(type.unit) === null
  if (type.is === 'record') return Object.values(type.fields).some(hasUnknownUnit)
  return (type.is === 'list' || type.is === 'map') && hasUnknownUnit(type.of)
}

function expectedOf(wanted: Wanted): ValueType | null {
  if (wanted.is === 'any') return null
  if (wanted.is === 'list') return wanted
  if (wanted.is !== 'number') return { is: wanted.is }
  if (wanted.unit === undefined || (wanted.unit !== null && unitOf(wanted.unit) === null)) return null
  return { is: 'number', unit: wanted.unit }
}

/** Scores before whatever reads them; a circle of scores stays unlinked and is told by the check `score_cycle`. */
function scoresFirst(draft: Draft): readonly PlacedExpression[] {
  const formulas = new Map(
    draft.scores.flatMap(({ name, value }) => {
      const placed = draft.expressions.find(({ hole }) => hole === value)
      return placed ? [[name, placed] as const] : []
    }),
  )
  const ordered = new Set<PlacedExpression>()
  const visiting = new Set<string>()
  const visit = (name: string): void => {
    const placed = formulas.get(name)
    if (!placed || ordered.has(placed) || visiting.has(name)) return
    visiting.add(name)
    for (const read of namesRead(placed)) visit(read)
    ordered.add(placed)
  }
  for (const name of formulas.keys()) visit(name)
  return [...ordered, ...draft.expressions.filter((placed) => !ordered.has(placed))]
}

/** Names that an expression mentions, before anybody knows what they are. */
export function namesRead(placed: PlacedExpression): ReadonlySet<string> {
  const known = read.get(placed)
  if (known) return known
  const { tree } = parseExpression(placed.hole.source)
  const names = tree ? namesIn(tree) : new Set<string>()
  read.set(placed, names)
  return names
}

const read = new WeakMap<PlacedExpression, ReadonlySet<string>>()

function namesIn(tree: Formula): ReadonlySet<string> {
  const names = new Set<string>()
  const open: Formula[] = [tree]
  for (let next = open.pop(); next; next = open.pop()) {
    if (next.is === 'name') names.add(next.name)
    else if (next.is === 'map') open.push(...next.entries.flat())
    open.push(...partsOf(next))
  }
  return names
}

function partsOf(tree: Formula): readonly Formula[] {
  switch (tree.is) {
    case 'field':
    case 'not':
    case 'minus':
      return [tree.of]
    case 'index':
      return [tree.of, tree.key]
    case 'call':
      return tree.args
    case 'method':
      return [tree.of, ...tree.args]
    case 'list':
      return tree.items
    case 'if':
      return [tree.test, tree.yes, tree.no]
    case 'and':
    case 'or':
    case 'binary':
      return [tree.left, tree.right]
    default:
      return []
  }
}
