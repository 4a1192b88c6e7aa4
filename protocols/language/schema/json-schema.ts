/** The protocol file's shape as JSON Schema, for editors: made of the very schemas that the reader uses. */
import { z } from 'zod'
import { NODE_SCHEMAS } from './kinds.ts'
import { top } from './top.ts'

type JsonSchema = z.core.JSONSchema.BaseSchema

const STEP = { $ref: '#/$defs/step' }

/**
 * The shape of `protocol.yaml` in JSON Schema (draft 2020-12). It says what keys there are and what stands behind
 * them; that a step's first key is its kind, and all that needs more than one place of the file, the reader tells.
 */
export function protocolJsonSchema(): JsonSchema {
  const { $schema, ...file } = shapeOf(top)
  const kinds = [...NODE_SCHEMAS.keys()]
  const nodes = kinds.map((kind) => [kind, withoutDialect(shapeOf(shapeOfKind(kind)))] as const)
  const step = {
    type: 'object',
    anyOf: kinds.map((kind) => ({ required: [kind] })),
    allOf: kinds.map((kind) => ({ if: { required: [kind] }, then: { $ref: `#/$defs/${kind}` } })),
  }
  return {
    $schema,
    title: 'Protocol of a hand or arm test',
    ...file,
    properties: { ...file.properties, evenhand: { const: 1 } },
    $defs: { step, ...Object.fromEntries(nodes) },
  } as JsonSchema
}

const shapeOfKind = (kind: string): z.ZodType => NODE_SCHEMAS.get(kind) ?? z.never()

/** What the file's shapes leave open is always a step: its kind decides over it. */
function shapeOf(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema._zod.def.type === 'unknown') Object.assign(jsonSchema, STEP)
    },
  })
}

function withoutDialect({ $schema: _, ...rest }: JsonSchema): Omit<JsonSchema, '$schema'> {
  return rest
}
