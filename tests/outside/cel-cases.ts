/** The public conformance cases of CEL (specification 0.25.1) in the groups that our subset touches. */
import { tests as conformance } from '@bufbuild/cel-spec/testdata/conformance.js'
import { boundTo, evaluateOurs, type Ours } from './cel-ours.ts'

export const GROUPS = [
  'basic',
  'comparisons',
  'conversions',
  'fields',
  'fp_math',
  'integer_math',
  'lists',
  'logic',
  'macros',
  'namespace',
  'parse',
  'plumbing',
  'string',
  'timestamps',
] as const

export interface Case {
  /** `<group>/<section>/<name>`; a name that stands there twice gets `#2`. */
  readonly id: string
  readonly source: string
  readonly agrees: boolean
  readonly ours: Ours
}

type Suite = typeof conformance
type Original = NonNullable<Suite['tests']>[number]['original']

/** A value of a kind that this language doesn't have: it equals nothing. */
const FOREIGN = Symbol('foreign')

function plain(value: unknown): unknown {
  const [[kind, held] = ['nullValue', null]] = Object.entries(value ?? {})
  switch (kind) {
    case 'int64Value':
    case 'doubleValue':
      return Number(held)
    case 'stringValue':
    case 'boolValue':
      return held
    case 'nullValue':
      return null
    case 'listValue':
      return (held.values ?? []).map(plain)
    case 'mapValue':
      return Object.fromEntries(
        (held.entries ?? []).map((entry: { key: unknown; value: unknown }) => [
          String(plain(entry.key)),
          plain(entry.value),
        ]),
      )
    default:
      return FOREIGN
  }
}

const isFailing = (ours: Ours): boolean => !('value' in ours)

function judge(original: Original): Pick<Case, 'agrees' | 'ours'> {
  const given = Object.entries(original.bindings ?? {}).map(
    ([name, { value }]: [string, { value?: unknown }]) => [name, boundTo(plain(value))] as const,
  )
  const bound = Object.fromEntries(given.flatMap(([name, one]) => (one === null ? [] : [[name, one]])))
  const ours = evaluateOurs(original.expr, bound)
  if (!('value' in original)) return { ours, agrees: isFailing(ours) }
  return { ours, agrees: 'value' in ours && same(ours.value, plain(original.value)) }
}

/** Equal, whatever the order of keys; the zeros are one. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b
  const keys = Object.keys(a)
  const held = b as Record<string, unknown>
  return (
    Array.isArray(a) === Array.isArray(b) &&
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same((a as Record<string, unknown>)[key], held[key]))
  )
}

function casesOf(suite: Suite, path: readonly string[]): Case[] {
  const inner = (suite.suites ?? []).flatMap((one) => casesOf(one, [...path, one.name]))
  const own = (suite.tests ?? []).map(({ original }) => ({
    id: [...path, original.name ?? ''].join('/'),
    source: original.expr,
    ...judge(original),
  }))
  return [...inner, ...own]
}

function numbered(cases: readonly Case[]): Case[] {
  const seen = new Map<string, number>()
  return cases.map((one) => {
    const times = (seen.get(one.id) ?? 0) + 1
    seen.set(one.id, times)
    return times === 1 ? one : { ...one, id: `${one.id}#${times}` }
  })
}

/** @throws where a case can't even be judged: nothing a protocol holds may do that */
export const conformanceCases = (): readonly Case[] =>
  numbered(
    GROUPS.flatMap((group) =>
      (conformance.suites ?? [])
        .filter(({ name }) => name === group)
        .flatMap((suite) => casesOf(suite, [suite.name])),
    ),
  )
