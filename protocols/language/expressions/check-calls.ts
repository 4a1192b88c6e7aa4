import { condition } from './check-operators.ts'
import { type Checking, complain, meant } from './checking.ts'
import { type Formula, heldBy } from './formula.ts'
import { FORMULAS } from './formulas.ts'
import { MACROS, type Macro, type Term } from './term.ts'
import type { Tree } from './tree.ts'
import type { ExpressionProblemCode, ValueType } from './types.ts'
import { describe, type Typed } from './units-of-types.ts'

type Of<K extends Tree['is']> = Extract<Tree, { is: K }>

export function checkCall(tree: Of<'call'>, checking: Checking): Typed | null {
  if (tree.name === 'has') return checkHas(tree, checking)
  const formula = FORMULAS.get(tree.name)
  if (formula === undefined || formula.asMethod) return unknownFunction(tree, checking)
  return applied(formula, tree.args, tree, checking)
}

export function checkMethod(tree: Of<'method'>, checking: Checking): Typed | null {
  const macro = MACROS.find((name) => name === tree.name)
  if (macro !== undefined) return checkMacro(macro, tree, checking)
  const formula = FORMULAS.get(tree.name)
  if (formula === undefined || !(formula.asMethod || formula.name === 'size'))
    return unknownFunction(tree, checking)
  return applied(formula, [tree.of, ...tree.args], tree, checking)
}

function applied(formula: Formula, args: readonly Tree[], tree: Tree, checking: Checking): Typed | null {
  const typed = args.map((arg) => checking.check(arg))
  if (typed.includes(null)) return null
  const say = (
    code: ExpressionProblemCode,
    message: string,
    mend: string,
    at: { readonly start: number; readonly end: number } = tree,
  ) => complain(checking, at, code, message, mend)
  const checked = formula.check(
    typed.filter((arg) => arg !== null),
    say,
  )
  if (checked === null) return null
  const term: Term = { is: 'call', formula: formula.name, args: checked.args }
  return { type: checked.type, term, start: tree.start, end: tree.end }
}

/** Names of CEL that this language leaves out, with what to write instead. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  matches: "Use startsWith, endsWith or contains: patterns aren't bounded.",
  timestamp: 'Expressions have no clock.',
  duration: "Write quantity(2, 'min').",
  string: 'Texts are not made from numbers.',
  int: 'All numbers are of one kind.',
  uint: 'All numbers are of one kind.',
  double: 'All numbers are of one kind.',
  average: 'Write mean(…).',
  avg: 'Write mean(…).',
  stdev: 'Write sd(…).',
  range: 'Write spread(…) for the greatest less the least.',
}

function unknownFunction(tree: Of<'call' | 'method'>, checking: Checking): null {
  const start = tree.is === 'call' ? tree.start : tree.of.end + 1
  const at = { start, end: tree.is === 'call' ? start + tree.name.length : tree.end }
  const instead = Object.hasOwn(LEFT_OUT, tree.name) ? LEFT_OUT[tree.name] : undefined
  if (instead !== undefined)
    return complain(checking, at, 'not_supported', `${tree.name} is not part of this language.`, instead)
  const known = FORMULAS.get(tree.name)
  if (known !== undefined)
    return complain(
      checking,
      at,
      'unknown_function',
      `${tree.name} is not written this way.`,
      `Write ${known.use}.`,
    )
  const names = [...FORMULAS.keys(), ...MACROS, 'has']
  return complain(
    checking,
    at,
    'unknown_function',
    `There is no function ${tree.name}.`,
    meant(tree.name, names, ''),
  )
}

/** `has(x.name)`: whether there is a value. */
function checkHas(tree: Of<'call'>, checking: Checking): Typed | null {
  const [of] = tree.args
  if (of === undefined || tree.args.length !== 1 || (of.is !== 'field' && of.is !== 'index'))
    return complain(checking, tree, 'wrong_arguments', 'has takes one field.', 'Write has(task.mass).')
  const field = checking.check(of)
  if (field === null) return null
  return {
    type: { is: 'bool' },
    term: { is: 'present', of: field.term },
    start: tree.start,
    end: tree.end,
  }
}

function checkMacro(macro: Macro, tree: Of<'method'>, checking: Checking): Typed | null {
  const use = macro === 'map' ? 'rows.map(r, r.time)' : `rows.${macro}(r, r.time < 5)`
  const of = checking.check(tree.of)
  const [name, ...rest] = tree.args
  const body = rest.at(-1)
  const enough = rest.length === 1 || (macro === 'map' && rest.length === 2)
  if (name === undefined || body === undefined || !enough || name.is !== 'name')
    return complain(
      checking,
      tree,
      'wrong_arguments',
      `${macro} takes a name and an expression.`,
      `Write ${use}.`,
    )
  if (of === null) return null
  const held = heldBy(of.type)
  if (held === null)
    return complain(
      checking,
      tree.of,
      'wrong_type',
      `${macro} goes through a list, not ${describe(of.type)}.`,
      `Write ${use}.`,
    )
  const locals: Checking['locals'] = [...checking.locals, [name.name, held]]
  const where = rest.length === 2 && rest[0] !== undefined ? condition(rest[0], checking, locals) : null
  const inner = macro === 'map' ? checking.check(body, locals) : condition(body, checking, locals)
  if (inner === null || (rest.length === 2 && where === null)) return null
  return {
    type: resultOf(macro, held, inner.type),
    term: { is: 'macro', macro, name: name.name, of: of.term, where: where?.term ?? null, body: inner.term },
    start: tree.start,
    end: tree.end,
  }
}

function resultOf(macro: Macro, held: ValueType, body: ValueType): ValueType {
  if (macro === 'filter') return { is: 'list', of: held }
  return macro === 'map' ? { is: 'list', of: body } : { is: 'bool' }
}
