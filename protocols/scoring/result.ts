/**
 * What one administration's result says, as plain data: the screen, the report and the command line show this
 * and work out nothing of their own. Numbers are unrounded here; `decimals` says how they are shown.
 */
import { z } from 'zod'
import { NORM_KINDS } from '../language/model.ts'
import { place } from '../runner/events.ts'
import { correction, deviation, pass, trial } from '../runner/view.ts'

/** Why a value is missing: the outcome that caused it, or what else stood in the way. Never a zero. */
export const missing = z.strictObject({
  code: z.string(),
  detail: z.record(z.string(), z.union([z.string(), z.number()])),
})

const tabulated = z.strictObject({ rank: z.number(), value: z.number() })

/** What a row of a table states other than mean and SD, all values in the score's unit, and where the value stands in it. */
const normFigures = z.discriminatedUnion('statistic', [
  z.strictObject({
    statistic: z.literal('percentiles'),
    /** The tabulated percentiles around the value, ranks counted from the lowest value up; null beyond the outermost. */
    under: tabulated.nullable(),
    over: tabulated.nullable(),
    /** Beyond which outermost percentile the value lies, better counted upwards ("below the 5th"). */
    beyond: z.strictObject({ side: z.enum(['below', 'above']), rank: z.number() }).nullable(),
  }),
  z.strictObject({ statistic: z.literal('lms'), l: z.number(), m: z.number(), s: z.number() }),
  z.strictObject({
    statistic: z.literal('cut-offs'),
    cut: z.number(),
    side: z.enum(['below', 'above']),
    /** Words of the side that the value is on. */
    band: z.string(),
  }),
  z.strictObject({
    statistic: z.literal('bands'),
    /** Words of the band that holds the value; null where the table has none there. */
    band: z.string().nullable(),
    /** From this value on and below that one; null: open. */
    from: z.number().nullable(),
    below: z.number().nullable(),
  }),
])
export type NormFigures = z.infer<typeof normFigures>

export const normComparison = z.strictObject({
  norm: z.string(),
  title: z.string(),
  population: z.string(),
  source: z.strictObject({ id: z.string(), cite: z.string(), note: z.string() }),
  statistic: z.enum(NORM_KINDS),
  /** `memory` until a named person of the clinic has verified the table. */
  standing: z.enum(['seen', 'memory', 'verified']),
  verifiedBy: z.string().nullable(),
  /**
   * `used`: one row; `several`: as many as age, sex or dominance leave open; or why there is no comparison.
   * Withheld and unavailable ones show no rows.
   */
  status: z.enum([
    'used',
    'several',
    'withheld',
    'out_of_range',
    'no_row',
    'no_spread',
    'no_band',
    'unavailable',
  ]),
  /** What to keep in mind, or why it is withheld: codes of `reasons.ts`. */
  caution: z.array(missing),
  /** One per applicable stratum: several where age, sex or dominance is uncertain. */
  strata: z.array(
    z.strictObject({
      sex: z.enum(['F', 'M', 'any']),
      ageMin: z.number().nullable(),
      ageMax: z.number().nullable(),
      hand: z.enum(['right', 'left', 'dominant', 'nondominant', 'any']),
      n: z.number().nullable(),
      /** The cells of the table's own columns by which the row was chosen: a word, or a range such as `0..8`. */
      chosenBy: z.record(z.string(), z.string()),
      /** In the score's unit, whatever the table's is; null where the table states other figures. */
      mean: z.number().nullable(),
      sd: z.number().nullable(),
      /** Null where the table states mean and SD. */
      figures: normFigures.nullable(),
      /** Line of the table. */
      line: z.int(),
      provenance: z.enum(['seen', 'memory']),
      /** z as computed from the raw direction. */
      z: z.number().nullable(),
      /** z with better counted upwards: flipped once, here, for scores where lower is better. */
      performanceZ: z.number().nullable(),
      /** Per cent of the norm group whose performance lies below this one, `definition` says how. */
      percentile: z.number().nullable(),
      /** 95 % interval of the percentile for the size of the norm group; null where that isn't known. */
      percentileInterval: z.tuple([z.number(), z.number()]).nullable(),
      definition: z.enum(['normal', 'modified-t', 'lms', 'tabulated', 'none']),
    }),
  ),
})
export type NormComparison = z.infer<typeof normComparison>

export const change = z.strictObject({
  earlier: z.strictObject({
    administration: z.string(),
    on: z.string(),
    version: z.string(),
    value: z.number(),
    over: z.boolean(),
  }),
  /** Now less then, in the score's unit; null where a bound leaves it open. */
  difference: z.number().nullable(),
  /** True where a bound makes the difference at least this large. */
  differenceOver: z.boolean(),
  /** The direction as a performance; null for scores without one, and where nothing can be told. */
  towards: z.enum(['better', 'worse', 'same']).nullable(),
  /** What stood differently then, whatever the figure: codes of `reasons.ts`. */
  cautions: z.array(missing),
  figures: z.array(
    z.strictObject({
      statistic: z.enum(['SEM', 'MDC90', 'MDC95', 'MCID']),
      /** In the score's unit; null where it is a percentage of a first value that is a bound or zero. */
      size: z.number().nullable(),
      /** What the difference is held against: an MDC95 worked out from a SEM, else `size`. */
      threshold: z.number().nullable(),
      /** The figure as printed: `19.4 %`, `6.2 s`. */
      printed: z.string(),
      population: z.string(),
      source: z.string(),
      provenance: z.enum(['seen', 'memory', 'abstract']),
      n: z.number().nullable(),
      interval: z.string(),
      /** Whether the difference is larger (MCID: as large or larger); null where that can't be told. */
      exceeded: z.boolean().nullable(),
      cautions: z.array(missing),
    }),
  ),
  /** The sentence to show, worded in the words files: codes of `reasons.ts`. */
  sentence: missing,
})
export type Change = z.infer<typeof change>

/** How far one value lies from the long-run mean of the same client: another thing than a norm's interval. */
const errorOfValue = z.strictObject({
  statistic: z.enum(['SEM', 'MDC95']),
  /** The figure as printed. */
  printed: z.string(),
  /** Half of the 95 % interval around the value, in the score's unit: 1.96 standard errors of measurement. */
  half: z.number(),
  population: z.string(),
  source: z.string(),
  provenance: z.enum(['seen', 'memory', 'abstract']),
  n: z.number().nullable(),
  cautions: z.array(missing),
})
export type ErrorOfValue = z.infer<typeof errorOfValue>

/** The error of taking times by hand, in the score's unit: of the reading, never of the person; no measure of change. */
const measuringUncertainty = z.strictObject({
  /** Expanded: the value lies within this of what is shown with about 95 % (as a coverage factor of 2 has it). */
  half: z.number(),
  /** The law of propagation, or a simulation where the score's formula isn't straight enough for it. */
  method: z.enum(['formula', 'simulation']),
  /** True where it is more than a twentieth of the value: too short a time for a hand to take. */
  isLarge: z.boolean(),
  /** By how much unlike starts and stops make the value too large; 0: they cancel; null: not known. Never taken off. */
  bias: z.number().nullable(),
  /** What began and what ended the times; null where the protocol doesn't tell or they differ. */
  start: z.enum(['said', 'seen']).nullable(),
  stop: z.enum(['said', 'seen']).nullable(),
})
export const scoreValue = z.strictObject({
  score: z.string(),
  title: z.string(),
  /** Passes of the score's `each`: `{ hand: 'right' }`. */
  place,
  /** The same, outermost first, with what words need. */
  passes: z.array(pass),
  value: z.number().nullable(),
  /** True where the value is a bound: "at least". */
  over: z.boolean(),
  unit: z.string(),
  decimals: z.int(),
  better: z.enum(['higher', 'lower', 'none']),
  shown: z.boolean(),
  missing: missing.nullable(),
  /** Null where the score rests on no hand-taken time, has no value, is a bound or goes in steps. */
  uncertainty: measuringUncertainty.nullable(),
  /** Ids of the trials that the value rests on. */
  trials: z.array(z.uuid()),
  norms: z.array(normComparison),
  otherHand: z
    .strictObject({
      value: z.number().nullable(),
      difference: z.number().nullable(),
      ratio: z.number().nullable(),
      /** Expanded uncertainties of the two, for taking times by hand; null where no time is behind them. */
      uncertainty: z
        .strictObject({ difference: z.number().nullable(), ratio: z.number().nullable() })
        .nullable(),
      /** Why no comparison is made. */
      withheld: missing.nullable(),
    })
    .nullable(),
  /** Published figures that apply, as the error of this one value; empty where it has none or is a bound. */
  error: z.array(errorOfValue),
  change: z.array(change),
})
export type ScoreValue = z.infer<typeof scoreValue>

/** The error of single times taken by hand, in seconds. */
export const timing = z.strictObject({
  /** Expanded uncertainty of each time, by the trial's id and the column. */
  times: z.record(z.string(), z.record(z.string(), z.number())),
  /** Two single times nearer than this can't be told apart by hand. */
  pair: z.number(),
  /** Whose error of pressing it rests on: figures of others, or the examiner's own. */
  examiner: z.strictObject({
    from: z.enum(['published', 'own']),
    reaction: z.number(),
    spread: z.number(),
    source: z.string(),
  }),
})
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
  /** What befell the trials, void reasons included, in the protocol's words: trials name it. */
  happenings: z.array(z.strictObject({ name: z.string(), seen: z.string() })),
  deviations: z.array(deviation),
  corrections: z.array(correction),
  /** `text`: the protocol's own words for the option; null for a value such as `60 s`. */
  conditions: z.array(z.strictObject({ name: z.string(), value: z.string(), text: z.string().nullable() })),
  clock: z.strictObject({ resolutionMs: z.number(), isolated: z.boolean() }).nullable(),
  /** Null where no time was taken. */
  timing: timing.nullable(),
  cautions: z.array(z.string()),
  sources: z.array(z.strictObject({ id: z.string(), cite: z.string(), seen: z.string(), note: z.string() })),
})
export type Result = z.infer<typeof result>
