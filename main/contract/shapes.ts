/** Shapes that several calls share. */
import { z } from 'zod'
import { civilDate, profile } from '../../protocols/client.ts'

export const id = z.uuid()

export const user = z.strictObject({ id, name: z.string() })

/** What a list may show of a client while no visit is open. */
export const clientLine = z.strictObject({
  id,
  name: z.string(),
  number: z.string(),
  secondIdentifier: z.string(),
  born: z.string(),
})

export const client = z.strictObject({
  id,
  profile,
  /** Completed years on the day asked for, or the range they may lie in. */
  age: z.strictObject({ from: z.int(), to: z.int() }).nullable(),
})

const diagnostic = z.strictObject({
  code: z.string(),
  severity: z.enum(['error', 'warning', 'advice']),
  file: z.string(),
  line: z.int(),
  column: z.int(),
  endLine: z.int(),
  endColumn: z.int(),
  message: z.string(),
  mend: z.string(),
})

export const protocolLine = z.strictObject({
  /** The folder's name; equals the id when the protocol is sound. */
  key: z.string(),
  from: z.enum(['library', 'clinic']),
  sound: z.boolean(),
  id: z.string().nullable(),
  version: z.string().nullable(),
  title: z.string(),
  purpose: z.string(),
  suits: z.string(),
  minutes: z.tuple([z.number(), z.number()]).nullable(),
  measures: z.array(z.string()),
  kit: z.array(z.string()),
  problems: z.array(diagnostic),
})

/** What has to be asked before the first trial, in the protocol's words. */
export const protocolCard = z.strictObject({
  line: protocolLine,
  floor: z.string().nullable(),
  ceiling: z.string().nullable(),
  precautions: z.array(z.strictObject({ id: z.string(), ask: z.string(), why: z.string().nullable() })),
  conditions: z.array(
    z.strictObject({
      name: z.string(),
      title: z.string(),
      setBy: z.enum(['file', 'kit', 'clinic', 'examiner']),
      options: z.array(z.strictObject({ id: z.string(), text: z.string() })),
      usual: z.string().nullable(),
    }),
  ),
  kit: z.array(
    z.strictObject({
      id: z.string(),
      text: z.string(),
      check: z.string().nullable(),
      registered: z.boolean(),
    }),
  ),
  accommodations: z.array(z.strictObject({ id: z.string(), text: z.string() })),
  wordings: z.array(z.string()),
  sources: z.array(z.strictObject({ id: z.string(), cite: z.string(), seen: z.string(), note: z.string() })),
})

/** A norm table in full, so that a person can compare it with its source row by row. */
export const normTable = z.strictObject({
  norm: z.string(),
  title: z.string(),
  population: z.string(),
  /** Title of the score that it is for. */
  score: z.string(),
  unit: z.string(),
  file: z.string(),
  source: z.strictObject({ cite: z.string(), note: z.string() }),
  /** The table's columns beside sex, ages, hand, n and provenance, as its file calls them. */
  columns: z.array(z.string()),
  rows: z.array(
    z.strictObject({
      line: z.int(),
      sex: z.enum(['F', 'M', 'any']),
      ageMin: z.number().nullable(),
      ageMax: z.number().nullable(),
      hand: z.enum(['right', 'left', 'dominant', 'nondominant', 'any']),
      n: z.number().nullable(),
      /** What stands under each of `columns`; null: nothing. */
      cells: z.array(z.union([z.number(), z.string()]).nullable()),
      provenance: z.enum(['seen', 'memory']),
    }),
  ),
  /** Who of the clinic compared this very table with its source; null: nobody yet. */
  verified: z.strictObject({ by: z.string(), at: z.string() }).nullable(),
})

/** The device's signature over its records when an administration ended: what its report shows of it, and when. */
export const seal = z.strictObject({ code: z.string(), at: z.string() })

export const administrationLine = z.strictObject({
  id,
  protocol: z.strictObject({ id: z.string(), version: z.string(), title: z.string() }),
  client: id.nullable(),
  clientName: z.string(),
  examiner: z.string(),
  on: civilDate,
  phase: z.string(),
  noteTaken: z.boolean(),
  enteredInError: z.boolean(),
})

export const settings = z.strictObject({
  /** `KeyboardEvent.code` of the key that starts, stops and goes on; a pedal that acts as a key is its key. */
  mainKey: z.string().min(1),
  pedalKey: z.string().nullable(),
  /** ms in which a second press of the same key is a bounce. */
  bounceMs: z.number().min(0).max(500),
  sound: z.boolean(),
  showClock: z.boolean(),
})

export const visit = z.strictObject({
  id,
  client: id,
  openedAt: z.string(),
  administrations: z.array(administrationLine),
})

export const historyPoint = z.strictObject({
  administration: id,
  at: z.string(),
  on: civilDate,
  place: z.record(z.string(), z.string()),
  value: z.number().nullable(),
  over: z.boolean(),
  version: z.string(),
  /** False where conditions, version or kit differ from the point before: the line isn't joined. */
  joins: z.boolean(),
  deviations: z.int(),
})

export { profile }
