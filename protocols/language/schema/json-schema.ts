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
  const file = shapeOf(top)
  const kinds = [...NODE_SCHEMAS.keys()]
  const nodes = kinds.map((kind) => [kind, shapeOf(shapeOfKind(kind))] as const)
  const step = {
    type: 'object',
    anyOf: kinds.map((kind) => ({ required: [kind] })),
    // What isn't of a kind fits whatever that kind's shape is: a condition, without a key that a promise has.
    allOf: kinds.map((kind) => ({ anyOf: [{ not: { required: [kind] } }, { $ref: `#/$defs/${kind}` }] })),
  }
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Protocol of a hand or arm test',
    ...file,
    properties: { ...file.properties, evenhand: { const: 1 } },
    $defs: { step, ...Object.fromEntries(nodes) },
  } as JsonSchema
}

const shapeOfKind = (kind: string): z.ZodType => NODE_SCHEMAS.get(kind) ?? z.never()

/** What the file's shapes leave open is always a step: its kind decides over it. */
function shapeOf(schema: z.ZodType): JsonSchema {
  const shape = z.toJSONSchema(schema, {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema instanceof z.ZodUnknown) Object.assign(jsonSchema, STEP)
    },
  })
  return Object.fromEntries(Object.entries(shape).filter(([key]) => key !== '$schema'))
}
