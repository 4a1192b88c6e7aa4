/** The keys of a shape, and what stands behind each, for the manual. */
import { z } from 'zod'

export interface KeyPath {
  /** From the map outwards: `times.least`; names that the author gives are passed over. */
  readonly path: string
  readonly isNeeded: boolean
  /** What belongs there, in a phrase. */
  readonly form: string
}

/** Stands for any value in place of the key, and is told in the page on expressions. */
const ANYWHERE = 'from'

/** All keys of a map's shape, each after the one that holds it. */
export function keyPathsOf(schema: z.ZodType): readonly KeyPath[] {
  const found = new Map<string, KeyPath>()
  collect(schema, '', found)
  return [...found.values()]
}

function collect(schema: z.ZodType, before: string, found: Map<string, KeyPath>): void {
  if (schema instanceof z.ZodOptional) return collect(schema.unwrap() as z.ZodType, before, found)
  if (schema instanceof z.ZodArray) return collect(schema.element as z.ZodType, before, found)
  if (schema instanceof z.ZodRecord) return collect(schema.valueType as z.ZodType, before, found)
  if (schema instanceof z.ZodUnion) {
    const options = (schema.options as readonly z.ZodType[]).filter((option) => !isPhrase(option))
    for (const option of options) collect(option, before, found)
    return
  }
  if (!(schema instanceof z.ZodObject)) return
  for (const [key, value] of Object.entries(schema.shape as Readonly<Record<string, z.ZodType>>)) {
    if (key === ANYWHERE) continue
    const path = before === '' ? key : `${before}.${key}`
    if (!found.has(path)) found.set(path, { path, isNeeded: !value.isOptional(), form: formOf(value) })
    collect(value, path, found)
  }
}

/** A way to write a value, such as `{ said }`: the phrase of the key tells it. */
function isPhrase(schema: z.ZodType): boolean {
  return schema instanceof z.ZodObject && Object.keys(schema.shape as object).length === 1
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'words',
  number: 'a number',
  boolean: '`true` or `false`',
  array: 'a list',
  object: 'a map',
  record: 'a map',
  unknown: 'steps',
}

/** The phrase by which the reader asks for such a value, or else its type. */
function formOf(schema: z.ZodType): string {
  if (schema instanceof z.ZodOptional) return formOf(schema.unwrap() as z.ZodType)
  if (schema instanceof z.ZodTuple) return '`[lowest, highest]`'
  if (schema instanceof z.ZodArray) {
    const inner = formOf(schema.element as z.ZodType)
    return inner === 'steps' ? 'a list of steps' : `a list: ${inner}`
  }
  const said = schema.safeParse(Symbol('none')).error?.issues[0]?.message ?? ''
  if (said !== '' && !said.startsWith('Invalid')) return said
  if (schema instanceof z.ZodNumber && schema.isInt) return 'a whole number'
  return TYPES[schema.def.type] ?? schema.def.type
}
