import { broughtTo, commonType, describe, type Typed, described } from './units-of-types.ts'
import { type Checking, complain } from './checking.ts'
import type { ArithmeticOperator, Comparison, Term } from './term.ts'
import type { Tree } from './tree.ts'
import type { ValueType } from './types.ts'
import { productUnit, quotientUnit } from '../units.ts'

type At = { readonly start: number; readonly end: number }
type Of<K extends Tree['is']> = Extract<Tree, { is: K }>

const typed = (tree: At, type: ValueType, term: Term): Typed => ({
  type,
  term,
  start: tree.start,
  end: tree.end,
})

/** Both sides brought to the type they share; null after complaining. */
function alike(left: Typed, right: Typed, tree: At, checking: Checking) {
  const type = commonType([left.type, right.type])
  const a = type === null ? null : broughtTo(left.term, left.type, type)
  const b = type === null ? null : broughtTo(right.term, right.type, type)
  if (type !== null && a !== null && b !== null) return { type, left: a, right: b }
  const units = left.type.is === 'number' && right.type.is === 'number'
  return complain(
    checking,
    tree,
    units ? 'unit_mismatch' : 'wrong_type',
    `${described(left.type)} and ${describe(right.type)} don't go together.`,
    units
      ? "Use values that measure the same thing; a bare number gets a unit by quantity(2, 'min')."
      : 'Use values of one kind on both sides.',
  )
}

export function checkBinary(tree: Of<'binary'>, checking: Checking): Typed | null {
  const left = checking.check(tree.left)
  const right = checking.check(tree.right)
  if (left === null || right === null) return null
  switch (tree.operator) {
    case '+':
    case '-':
    case '*':
    case '/':
    case '%':
      return arithmetic(tree.operator, left, right, tree, checking)
    case 'in':
      return membership(left, right, tree, checking)
    default:
      return comparison(tree.operator, left, right, tree, checking)
  }
}

function arithmetic(
  operator: ArithmeticOperator,
  left: Typed,
  right: Typed,
  tree: At,
  checking: Checking,
): Typed | null {
  for (const side of [left, right])
    if (side.type.is !== 'number')
      return complain(
        checking,
        side,
        'wrong_type',
        `${operator} works on numbers, not on ${describe(side.type)}.`,
        side.type.is === 'list' || side.type.is === 'map'
          ? 'Make it one number first, such as mean(…) or sum(…).'
          : 'Use a number here.',
      )
  if (left.type.is !== 'number' || right.type.is !== 'number') return null
  if (operator === '*' || operator === '/') {
    const unit = (operator === '*' ? productUnit : quotientUnit)(left.type.unit, right.type.unit)
    return typed(
      tree,
      { is: 'number', unit },
      { is: 'arithmetic', operator, left: left.term, right: right.term },
    )
  }
  const both = alike(left, right, tree, checking)
  return both === null
    ? null
    : typed(tree, both.type, { is: 'arithmetic', operator, left: both.left, right: both.right })
}

function comparison(
  operator: Comparison,
  left: Typed,
  right: Typed,
  tree: At,
  checking: Checking,
): Typed | null {
  const equality = operator === '==' || operator === '!='
  if (equality && (left.type.is === 'null' || right.type.is === 'null')) {
    const present: Term = { is: 'present', of: left.type.is === 'null' ? right.term : left.term }
    return typed(tree, { is: 'bool' }, operator === '!=' ? present : { is: 'not', of: present })
  }
  const both = alike(left, right, tree, checking)
  if (both === null) return null
  const comparable = equality ? ['number', 'text', 'bool'] : ['number']
  if (!comparable.includes(both.type.is))
    return complain(
      checking,
      tree,
      'wrong_type',
      `${operator} doesn't compare ${describe(both.type)}.`,
      equality ? 'Compare single values.' : 'Compare numbers; texts are told apart with == and !=.',
    )
  if (disjoint(left.type, right.type))
    return complain(
      checking,
      written(left, right) ?? tree,
      'never_equal',
      never(left.type, right.type),
      'Write one of the values it can have.',
    )
  return typed(tree, { is: 'bool' }, { is: 'compare', operator, left: both.left, right: both.right })
}

/** Two texts of known choices that have none in common. */
const disjoint = (a: ValueType, b: ValueType): boolean =>
  a.is === 'text' && b.is === 'text' && a.oneOf !== undefined && b.oneOf !== undefined
    ? !a.oneOf.some((one) => b.oneOf?.includes(one))
    : false

/** The side that is a text written out: where a slip will be. */
const written = (...sides: readonly Typed[]): Typed | undefined =>
  sides.find(({ term }) => term.is === 'constant' && term.datum.is === 'text')

function never(a: ValueType, b: ValueType): string {
  const [few, many] = [a, b]
    .map((type) => (type.is === 'text' ? (type.oneOf ?? []) : []))
    .sort((x, y) => x.length - y.length)
  return `This is never '${(few ?? []).join("' or '")}': it can be ${(many ?? []).map((one) => `'${one}'`).join(', ')}.`
}

function membership(item: Typed, of: Typed, tree: At, checking: Checking): Typed | null {
  const bool: ValueType = { is: 'bool' }
  if (of.type.is === 'map')
    return item.type.is === 'text'
      ? typed(tree, bool, { is: 'in', item: item.term, of: of.term })
      : complain(
          checking,
          item,
          'wrong_type',
          `An id is text, not ${describe(item.type)}.`,
          `Write ${of.type.by}.id.`,
        )
  if (of.type.is !== 'list')
    return complain(
      checking,
      of,
      'wrong_type',
      `in looks into a list, not into ${describe(of.type)}.`,
      "Write a list, such as ['a', 'b'].",
    )
  const type = commonType([item.type, of.type.of])
  const one = type === null ? null : broughtTo(item.term, item.type, type)
  const all = type === null ? null : broughtTo(of.term, of.type, { is: 'list', of: type })
  if (one === null || all === null || type === null || type.is === 'list' || type.is === 'record')
    return complain(
      checking,
      tree,
      'wrong_type',
      `${described(item.type)} is never in ${describe(of.type)}.`,
      'Look for a value of the kind that the list holds.',
    )
  if (disjoint(item.type, of.type.of))
    return complain(
      checking,
      written(item, of) ?? tree,
      'never_equal',
      never(item.type, of.type.of),
      'Write values it can have.',
    )
  return typed(tree, bool, { is: 'in', item: one, of: all })
}

/** A condition: true or false, or null after complaining. */
export function condition(tree: Tree, checking: Checking, locals?: Checking['locals']): Typed | null {
  const found = checking.check(tree, locals)
  if (found === null || found.type.is === 'bool' || found.type.is === 'null') return found
  return complain(
    checking,
    tree,
    'wrong_type',
    `A condition is true or false, not ${describe(found.type)}.`,
    'Compare the value with something.',
  )
}

export function checkLogic(tree: Of<'and' | 'or'>, checking: Checking): Typed | null {
  const left = condition(tree.left, checking)
  const right = condition(tree.right, checking)
  if (left === null || right === null) return null
  return typed(tree, { is: 'bool' }, { is: tree.is, left: left.term, right: right.term })
}

export function checkNot(tree: Of<'not' | 'minus'>, checking: Checking): Typed | null {
  const of = condition(tree.of, checking)
  return of === null ? null : typed(tree, { is: 'bool' }, { is: 'not', of: of.term })
}

export function checkMinus(tree: Of<'not' | 'minus'>, checking: Checking): Typed | null {
  const of = checking.check(tree.of)
  if (of === null) return null
  if (of.type.is !== 'number')
    return complain(
      checking,
      tree.of,
      'wrong_type',
      `- works on numbers, not on ${describe(of.type)}.`,
      'Use a number here.',
    )
  const negated = of.term.is === 'constant' && of.term.datum.is === 'number' ? of.term.datum : null
  const term: Term =
    negated === null ? { is: 'minus', of: of.term } : { is: 'constant', datum: { ...negated, n: -negated.n } }
  return typed(tree, of.type, term)
}

export function checkIf(tree: Of<'if'>, checking: Checking): Typed | null {
  const test = condition(tree.test, checking)
  const yes = checking.check(tree.yes)
  const no = checking.check(tree.no)
  if (test === null || yes === null || no === null) return null
  const both = alike(yes, no, tree, checking)
  return both === null
    ? null
    : typed(tree, both.type, { is: 'if', test: test.term, yes: both.left, no: both.right })
}

export function checkList(tree: Of<'list'>, checking: Checking): Typed | null {
  const items = tree.items.map((item) => checking.check(item))
  if (items.includes(null)) return null
  const found = items.filter((item) => item !== null)
  const type = commonType(found.map((item) => item.type)) ?? { is: 'number', unit: null }
  const terms = broughtToAll(found, type, tree, checking)
  return terms === null ? null : typed(tree, { is: 'list', of: type }, { is: 'list', items: terms })
}

function broughtToAll(items: readonly Typed[], type: ValueType, tree: At, checking: Checking): Term[] | null {
  const terms: Term[] = []
  for (const item of items) {
    const term = broughtTo(item.term, item.type, type)
    if (term === null)
      return complain(
        checking,
        item,
        item.type.is === 'number' && type.is === 'number' ? 'unit_mismatch' : 'wrong_type',
        `${described(item.type)} doesn't go with ${describe(type)} in one list.`,
        'Use values of one kind.',
      )
    terms.push(term)
  }
  return terms
}

/** A table written in place, `{'near': 1, 'far': 2}`: keys are texts written out. */
export function checkMap(tree: Of<'map'>, checking: Checking): Typed | null {
  const values = tree.entries.map(([, value]) => checking.check(value))
  const keys: string[] = []
  for (const [key] of tree.entries) {
    if (key.is !== 'text')
      return complain(
        checking,
        key,
        'not_supported',
        'The keys of a table are texts written out.',
        "Write {'near': 1, 'far': 2}.",
      )
    if (keys.includes(key.text))
      return complain(checking, key, 'wrong_arguments', `The key ${key.text} stands twice.`, 'Take one away.')
    keys.push(key.text)
  }
  if (values.includes(null)) return null
  const found = values.filter((value) => value !== null)
  const of = commonType(found.map((value) => value.type)) ?? { is: 'number', unit: null }
  const terms = broughtToAll(found, of, tree, checking)
  if (terms === null) return null
  const entries = terms.map((term, i) => [keys[i] ?? '', term] as const)
  return typed(tree, { is: 'map', by: 'key', of, keys }, { is: 'map', entries })
}
