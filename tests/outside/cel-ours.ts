/** Expressions of this language evaluated as plain CEL would be: no units, no trials, plain values out. */
import {
  checkExpression,
  datum,
  type Datum,
  evaluate,
  parseExpression,
  type ValueType,
} from '../../protocols/language/expressions/index.ts'

export interface Bound {
  readonly type: ValueType
  readonly datum: Datum
}

export type Ours = { readonly value: unknown } | { readonly refused: string } | { readonly missing: string }

export function evaluateOurs(source: string, bound: Readonly<Record<string, Bound>> = {}): Ours {
  const parsed = parseExpression(source)
  if (parsed.tree === null) return { refused: parsed.problems[0].message }
  const environment = Object.fromEntries(Object.entries(bound).map(([name, { type }]) => [name, type]))
  const { expression, problems } = checkExpression(source, parsed.tree, environment)
  if (expression === null) return { refused: problems[0]?.message ?? '' }
  const read = (name: string) => bound[name]?.datum ?? null
  const { value, missing } = evaluate(expression, { read })
  return missing === null || missing.code === 'null' ? { value: plain(value) } : { missing: missing.code }
}

function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain)
  if (typeof value !== 'object' || value === null) return value
  if ('n' in value) return value.n
  return 'record' in value && typeof value.record === 'object' && value.record !== null
    ? Object.fromEntries(Object.entries(value.record).map(([key, part]) => [key, plain(part)]))
    : value
}

/** A plain value as a name of an expression holds it; null where this language has no such value. */
export function boundTo(value: unknown): Bound | null {
  if (typeof value === 'number') return { type: { is: 'number', unit: null }, datum: datum.number(value) }
  if (typeof value === 'string') return { type: { is: 'text' }, datum: datum.text(value) }
  if (typeof value === 'boolean') return { type: { is: 'bool' }, datum: datum.bool(value) }
  if (value === null) return { type: { is: 'null' }, datum: datum.none('null') }
  if (typeof value !== 'object') return null
  const parts = Object.entries(value).map(([key, part]) => [key, boundTo(part)] as const)
  const entries = parts.flatMap(([key, part]) => (part === null ? [] : [[key, part] as const]))
  const of = entries[0]?.[1].type
  if (of === undefined || entries.length < parts.length) return null
  return Array.isArray(value)
    ? { type: { is: 'list', of }, datum: datum.list(entries.map(([, part]) => part.datum)) }
    : {
        type: { is: 'map', by: 'key', of },
        datum: { is: 'map', entries: new Map(entries.map(([key, part]) => [key, part.datum])) },
      }
}
