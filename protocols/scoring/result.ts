/**
 * What one administration's result says, as plain data: the screen, the report and the command line show this
 * and work out nothing of their own. Numbers are unrounded here; `decimals` says how they are shown.
 */
import { z } from 'zod'
import { deviation, trial } from '../runner/view.ts'

/** Why a value is missing: the outcome that caused it, or what else stood in the way. Never a zero. */
export const missing = z.strictObject({
  code: z.string(),
  detail: z.record(z.string(), z.union([z.string(), z.number()])),
})

export const normComparison = z.strictObject({
  norm: z.string(),
  title: z.string(),
  population: z.string(),
  source: z.strictObject({ id: z.string(), cite: z.string(), note: z.string() }),
  /** `memory` until a named person of the clinic has verified the table. */
  standing: z.enum(['seen', 'memory', 'verified']),
  verifiedBy: z.string().nullable(),
  /** `used`, or why not: out_of_range, no_row, no_spread, withheld, unknown_age, unavailable … */
  status: z.enum(['used', 'several', 'withheld', 'out_of_range', 'no_row', 'no_spread', 'unavailable']),
  caution: z.array(missing),
  /** One per applicable stratum: several where age, sex or dominance is uncertain. */
  strata: z.array(
    z.strictObject({
      words: z.string(),
      sex: z.enum(['F', 'M', 'any']),
      ageMin: z.number().nullable(),
      ageMax: z.number().nullable(),
      hand: z.string(),
      n: z.number().nullable(),
      mean: z.number(),
      sd: z.number().nullable(),
      line: z.int(),
      /** z as computed from the raw direction. */
      z: z.number().nullable(),
      /** z with better counted upwards: flipped once, here, for scores where lower is better. */
      performanceZ: z.number().nullable(),
      /** Per cent of the norm group whose performance lies below this one, `definition` says how. */
      percentile: z.number().nullable(),
      percentileInterval: z.tuple([z.number(), z.number()]).nullable(),
      definition: z.enum(['normal', 'modified-t']),
    }),
  ),
})
export type NormComparison = z.infer<typeof normComparison>

export const scoreValue = z.strictObject({
  score: z.string(),
  title: z.string(),
  /** Ids of the score's `each`: `{ hand: 'right' }`. */
  place: z.record(z.string(), z.string()),
  placeWords: z.string(),
  value: z.number().nullable(),
  /** True where the value is a bound: "at least". */
  over: z.boolean(),
  unit: z.string(),
  decimals: z.int(),
  better: z.enum(['higher', 'lower', 'none']),
  shown: z.boolean(),
  missing: missing.nullable(),
  /** Ids of the trials that the value rests on. */
  trials: z.array(z.uuid()),
  norms: z.array(normComparison),
  otherHand: z
    .strictObject({
      value: z.number().nullable(),
      difference: z.number().nullable(),
      ratio: z.number().nullable(),
      /** Why no comparison is made. */
      withheld: missing.nullable(),
    })
    .nullable(),
  change: z.array(
    z.strictObject({
      earlier: z.strictObject({
        administration: z.string(),
        on: z.string(),
        value: z.number(),
        over: z.boolean(),
      }),
      difference: z.number(),
      figures: z.array(
        z.strictObject({
          statistic: z.enum(['SEM', 'MDC90', 'MDC95', 'MCID']),
          /** In the score's unit, worked out from the percentage where the figure is one. */
          size: z.number(),
          printed: z.string(),
          population: z.string(),
          source: z.string(),
          exceeded: z.boolean(),
          cautions: z.array(missing),
        }),
      ),
      /** Codes of the sentence to show, worded in the words files. */
      sentence: missing,
    }),
  ),
})
export type ScoreValue = z.infer<typeof scoreValue>

export const result = z.strictObject({
  administration: z.uuid(),
  protocol: z.strictObject({
    id: z.string(),
    version: z.string(),
    title: z.string(),
    hash: z.string(),
    language: z.string(),
    wording: z.string().nullable(),
    from: z.enum(['library', 'clinic']),
  }),
  on: z.string(),
  startedAt: z.string(),
  finishedAt: z.string().nullable(),
  examiner: z.string(),
  rehearsal: z.boolean(),
  complete: z.boolean(),
  /** Age on the day in completed years, or the range it may lie in. */
  age: z.strictObject({ from: z.number(), to: z.number() }).nullable(),
  scores: z.array(scoreValue),
  trials: z.array(trial),
  deviations: z.array(deviation),
  corrections: z.array(
    z.strictObject({
      what: z.string(),
      first: z.string(),
      now: z.string(),
      reason: z.string(),
      at: z.string(),
    }),
  ),
  conditions: z.array(z.strictObject({ name: z.string(), value: z.string() })),
  clock: z.strictObject({ resolutionMs: z.number(), isolated: z.boolean() }).nullable(),
  cautions: z.array(z.string()),
  sources: z.array(z.strictObject({ id: z.string(), cite: z.string(), seen: z.string(), note: z.string() })),
})
export type Result = z.infer<typeof result>
