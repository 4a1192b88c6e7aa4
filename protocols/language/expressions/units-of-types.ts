/** What two types have in common, and the conversions that bring one to the other. */
import { isOne, type Rational } from '../../decimal.ts'
import { factorBetween } from '../units.ts'
import type { Term } from './term.ts'
import type { ValueType } from './types.ts'

export interface Typed {
  readonly type: ValueType
  readonly term: Term
  readonly start: number
  readonly end: number
}

export const NUMBER: ValueType = { is: 'number', unit: null }
export const BOOL: ValueType = { is: 'bool' }
const TEXT: ValueType = { is: 'text' }

/** A type in words, as a message says it. */
export function describe(type: ValueType): string {
  switch (type.is) {
    case 'number':
      return type.unit === null ? 'a number' : `a number in ${type.unit}`
    case 'text':
      return 'text'
    case 'bool':
      return 'true or false'
    case 'null':
      return 'null'
    case 'list':
      return `a list (each ${describe(type.of)})`
    case 'record':
      return `a record with ${Object.keys(type.fields).join(', ') || 'no fields'}`
    case 'map':
      return `values by ${type.by} (each ${describe(type.of)})`
  }
}

/** A type in words, at the beginning of a sentence. */
export const described = (type: ValueType): string =>
  describe(type).replace(/^./, (first) => first.toUpperCase())

/** The term's value times an exact factor; the same term where the factor is one. */
const scaledTerm = (term: Term, by: Rational): Term => (isOne(by) ? term : { is: 'convert', of: term, by })

/**
 * `term` brought from one type to another: numbers change unit, a bare number takes the unit asked for, lists
 * and maps do it item by item. Null when the types differ otherwise.
 */
export function broughtTo(term: Term, from: ValueType, to: ValueType): Term | null {
  if (from.is === 'null') return term
  if (from.is === 'number' && to.is === 'number') {
    if (from.unit === null || to.unit === null) return term
    const factor = factorBetween(from.unit, to.unit)
    return factor === null ? null : scaledTerm(term, factor)
  }
  if ((from.is === 'list' && to.is === 'list') || (from.is === 'map' && to.is === 'map'))
    return broughtTo(term, from.of, to.of)
  if (from.is === 'record' && to.is === 'record') return from === to ? term : null
  return from.is === to.is ? term : null
}

/** The type that several values share: the first unit named among them; null when they have none in common. */
export function commonType(types: readonly ValueType[]): ValueType | null {
  const named =
    types.find((type) => type.is !== 'null' && !isBare(type)) ?? types.find((t) => t.is !== 'null')
  if (named === undefined) return types[0] ?? null
  return named.is === 'text' ? mergedText(types) : named
}

function mergedText(types: readonly ValueType[]): ValueType {
  const sets = types.map((type) => (type.is === 'text' ? type.oneOf : undefined))
  if (sets.includes(undefined)) return TEXT
  return { is: 'text', oneOf: [...new Set(sets.flatMap((set) => set ?? []))] }
}

function isBare(type: ValueType): boolean {
  if (type.is === 'number') return type.unit === null
  return (type.is === 'list' || type.is === 'map') && isBare(type.of)
}
