import { z } from 'zod'
import type { Path } from '../reader/tree.ts'

/** The keys that a map at `path` of `schema` may have; empty where any key may stand, or no map. */
export function keysAt(schema: z.ZodType, path: Path): readonly string[] {
  let candidates: readonly z.ZodType[] = unwrapped(schema)
  for (const part of path) candidates = candidates.flatMap((each) => inside(each, part)).flatMap(unwrapped)
  return [...new Set(candidates.flatMap(ownKeys))]
}

function ownKeys(schema: z.ZodType): readonly string[] {
  if (schema instanceof z.ZodObject) return Object.keys(schema.shape as object)
  if (!(schema instanceof z.ZodRecord)) return []
  const key: unknown = schema.keyType
  return key instanceof z.ZodEnum ? key.options.map(String) : []
}

function unwrapped(schema: z.ZodType): readonly z.ZodType[] {
  if (schema instanceof z.ZodOptional) return unwrapped(schema.unwrap() as z.ZodType)
  if (schema instanceof z.ZodUnion) return (schema.options as readonly z.ZodType[]).flatMap(unwrapped)
  return [schema]
}

function inside(schema: z.ZodType, part: string | number): readonly z.ZodType[] {
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Readonly<Record<string, z.ZodType>>
    const found = Object.hasOwn(shape, String(part)) ? shape[String(part)] : undefined
    return found ? [found] : []
  }
  if (schema instanceof z.ZodArray) return [schema.element as z.ZodType]
  if (schema instanceof z.ZodRecord) return [schema.valueType as z.ZodType]
  return []
}
