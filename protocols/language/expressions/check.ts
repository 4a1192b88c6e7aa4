/** Names, types and units of an expression, before it is ever evaluated. */
import { broughtTo, describe, type Typed } from './units-of-types.ts'
import {
  checkBinary,
  checkIf,
  checkList,
  checkLogic,
  checkMap,
  checkMinus,
  checkNot,
} from './check-operators.ts'
import { checkCall, checkMethod } from './check-calls.ts'
import { type Checking, complain, meant } from './checking.ts'
import { bool, none, number, text } from './datum.ts'
import type { Term } from './term.ts'
import type { Tree } from './tree.ts'
import { isDimensionless } from '../units.ts'
import type { Environment, Expression, ExpressionProblem, ValueType } from './types.ts'
import { described, NUMBER } from './units-of-types.ts'

export type Checked =
  | { readonly expression: Expression; readonly problems: readonly [] }
  | { readonly expression: null; readonly problems: readonly ExpressionProblem[] }

/**
 * Checks a tree against the names at its place. With `expected` the result is brought to that type: a number is
 * converted to its unit, a bare number takes it; `unit: null` there asks for a number that measures nothing.
 * Gives every problem found, each with its stretch of `source`.
 */
export function checkExpression(
  source: string,
  tree: Tree,
  environment: Environment,
  expected: ValueType | null = null,
): Checked {
  const checking: Checking = {
    environment,
    locals: [],
    problems: [],
    reads: new Set(),
    check(part, locals) {
      return checkTree(part, locals === undefined ? this : { ...this, locals })
    },
  }
  const found = checkTree(tree, checking)
  const typed = found === null || expected === null ? found : asExpected(found, expected, checking)
  if (typed === null || checking.problems.length > 0) return { expression: null, problems: checking.problems }
  return {
    expression: { source, tree: typed.term, type: typed.type, reads: [...checking.reads] },
    problems: [],
  }
}

function asExpected(typed: Typed, expected: ValueType, checking: Checking): Typed | null {
  const { type } = typed
  const term = isBareWanted(expected, type) ? bared(typed) : broughtTo(typed.term, type, expected)
  // Of a text it stays known which texts it can be.
  const narrow = expected.is === 'text' && type.is === 'text'
  if (term !== null) return { ...typed, term, type: narrow ? type : expected }
  const units = type.is === 'number' && expected.is === 'number'
  return complain(
    checking,
    typed,
    units ? 'unit_mismatch' : 'wrong_type',
    `This gives ${describe(type)}, but ${describe(expected)} is needed here.`,
    units ? 'Change the formula or the unit so that both measure the same thing.' : 'Change the expression.',
  )
}

const isBareWanted = (expected: ValueType, type: ValueType): boolean =>
  expected.is === 'number' && expected.unit === null && type.is === 'number' && type.unit !== null

/** A number that measures nothing, such as a count, as a bare one; null where it does measure something. */
function bared({ term, type }: Typed): Term | null {
  if (type.is !== 'number' || type.unit === null || !isDimensionless(type.unit)) return null
  return broughtTo(term, type, { is: 'number', unit: '1' }) ?? term
}

const constant = (tree: Tree, type: ValueType, term: Extract<Term, { is: 'constant' }>['datum']): Typed => ({
  type,
  term: { is: 'constant', datum: term },
  start: tree.start,
  end: tree.end,
})

function checkTree(tree: Tree, checking: Checking): Typed | null {
  switch (tree.is) {
    case 'number':
      return constant(tree, NUMBER, number(tree.n))
    case 'text':
      return constant(tree, { is: 'text', oneOf: [tree.text] }, text(tree.text))
    case 'bool':
      return constant(tree, { is: 'bool' }, bool(tree.bool))
    case 'null':
      return constant(tree, { is: 'null' }, none('null'))
    case 'name':
      return checkName(tree, checking)
    case 'field':
      return checkField(tree, checking)
    case 'index':
      return checkIndex(tree, checking)
    case 'call':
      return checkCall(tree, checking)
    case 'method':
      return checkMethod(tree, checking)
    case 'list':
      return checkList(tree, checking)
    case 'map':
      return checkMap(tree, checking)
    case 'if':
      return checkIf(tree, checking)
    case 'and':
    case 'or':
      return checkLogic(tree, checking)
    case 'not':
      return checkNot(tree, checking)
    case 'minus':
      return checkMinus(tree, checking)
    case 'binary':
      return checkBinary(tree, checking)
  }
}

function checkName(tree: Tree & { is: 'name' }, checking: Checking): Typed | null {
  const { name, start, end } = tree
  const local = checking.locals.findLast(([bound]) => bound === name)
  if (local !== undefined) return { type: local[1], term: { is: 'name', name, local: true }, start, end }
  const type = Object.hasOwn(checking.environment, name) ? checking.environment[name] : undefined
  if (type === undefined) {
    const names = [...Object.keys(checking.environment), ...checking.locals.map(([bound]) => bound)]
    return complain(
      checking,
      tree,
      'unknown_name',
      `Nothing here is named ${name}.`,
      meant(name, names, 'Nothing is named here.'),
    )
  }
  checking.reads.add(name)
  return { type, term: { is: 'name', name, local: false }, start, end }
}

function checkField(tree: Tree & { is: 'field' }, checking: Checking): Typed | null {
  const of = checking.check(tree.of)
  if (of === null) return null
  const { name, start, end, nameStart } = tree
  const at = { start: nameStart, end: nameStart + name.length }
  if (of.type.is === 'map') return checkKey(of, name, at, tree, checking)
  if (of.type.is !== 'record')
    return complain(
      checking,
      at,
      'unknown_field',
      `${described(of.type)} has no fields.`,
      'Take the name after the dot away.',
    )
  const type = Object.hasOwn(of.type.fields, name) ? of.type.fields[name] : undefined
  if (type === undefined)
    return complain(
      checking,
      at,
      'unknown_field',
      `There is no field ${name} here.`,
      meant(name, Object.keys(of.type.fields), 'It has no fields.'),
    )
  return { type, term: { is: 'field', of: of.term, name }, start, end }
}

/** `rate.right`, which means `rate['right']`. */
function checkKey(
  of: Typed,
  key: string,
  at: { start: number; end: number },
  tree: Tree,
  checking: Checking,
): Typed | null {
  if (of.type.is !== 'map') return null
  const { keys } = of.type
  if (keys !== undefined && !keys.includes(key))
    return complain(
      checking,
      at,
      'unknown_field',
      `There is no ${of.type.by} ${key}.`,
      meant(key, keys, 'It has no values.'),
    )
  const term: Term = { is: 'index', of: of.term, key: { is: 'constant', datum: text(key) } }
  return { type: of.type.of, term, start: tree.start, end: tree.end }
}

function checkIndex(tree: Tree & { is: 'index' }, checking: Checking): Typed | null {
  const of = checking.check(tree.of)
  const key = checking.check(tree.key)
  if (of === null || key === null) return null
  if (tree.key.is === 'text' && of.type.is === 'map')
    return checkKey(of, tree.key.text, tree.key, tree, checking)
  const { start, end } = tree
  const term: Term = { is: 'index', of: of.term, key: key.term }
  if (of.type.is === 'map')
    return key.type.is === 'text'
      ? { type: of.type.of, term, start, end }
      : complain(
          checking,
          key,
          'wrong_type',
          `Values by ${of.type.by} are picked by its id, not by ${describe(key.type)}.`,
          `Write ${of.type.by}.id, or an id in quotation marks.`,
        )
  if (of.type.is === 'list')
    return key.type.is === 'number'
      ? { type: of.type.of, term, start, end }
      : complain(
          checking,
          key,
          'wrong_type',
          `A list is picked from by a whole number from 0, not by ${describe(key.type)}.`,
          'Write a whole number, or first(…) or last(…).',
        )
  return complain(
    checking,
    of,
    'wrong_type',
    `Nothing can be picked from ${describe(of.type)}.`,
    'Take the part in brackets away.',
  )
}
