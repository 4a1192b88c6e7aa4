/** What a stratum of a norm table says of a value, by what the rows of the table state. */
import type { Norm, NormRow, Score, Text } from '../language/model.ts'
import { convert } from '../language/units.ts'
import { percentileOf } from './percentile.ts'
import { rankInTable, type Tabulated } from './percentile-table.ts'
import type { NormComparison } from './result.ts'
import { lmsScore } from './statistics/lms.ts'
import { normalCdf } from './statistics/normal.ts'

type Stratum = NormComparison['strata'][number]
type Figures = Pick<
  Stratum,
  'mean' | 'sd' | 'figures' | 'z' | 'performanceZ' | 'percentile' | 'percentileInterval' | 'definition'
>

/** The value that is held against a stratum, in the score's unit. */
export interface Held {
  readonly norm: Norm
  readonly better: Score['better']
  readonly value: number
  readonly unit: string
  say(text: Text): string
}

const NOTHING: Figures = {
  mean: null,
  sd: null,
  figures: null,
  z: null,
  performanceZ: null,
  percentile: null,
  percentileInterval: null,
  definition: 'none',
}

/** The one place where a direction is turned: z with better counted upwards; null for scores without a better. */
export function asPerformance(difference: number, better: Score['better']): number | null {
  if (better === 'none') return null
  // Adding zero keeps a turned zero from being written as minus nothing.
  return better === 'lower' ? -difference + 0 : difference
}

/** Rows that state what a table of this kind is for. */
export const STATES: Readonly<Record<Norm['as'], (row: NormRow) => boolean>> = {
  'mean-sd': ({ mean }) => mean !== null,
  percentiles: ({ percentiles }) => percentiles.length > 0,
  lms: ({ lms }) => lms !== null,
  'cut-offs': ({ cutOff }) => cutOff !== null,
  bands: ({ band }) => band !== null,
}

/**
 * What the rows of one stratum say; only `bands` has several. Null where the table's unit doesn't convert to the
 * score's.
 */
export function figuresOf(
  rows: readonly NormRow[],
  held: Held,
): (Figures & { readonly row: NormRow }) | null {
  const [row] = rows
  if (row === undefined || convert(1, held.norm.unit, held.unit) === null) return null
  if (held.norm.as === 'bands') return byBands(rows, row, held)
  return { row, ...BY_KIND[held.norm.as](row, held) }
}

const BY_KIND: Readonly<Record<Exclude<Norm['as'], 'bands'>, (row: NormRow, held: Held) => Figures>> = {
  'mean-sd': byMeanAndSd,
  percentiles: byPercentiles,
  lms: byLms,
  'cut-offs': byCutOff,
}

/** That the unit converts was settled before. */
const inUnit = (value: number, { norm, unit }: Held): number => convert(value, norm.unit, unit) ?? Number.NaN

function byMeanAndSd(row: NormRow, held: Held): Figures {
  const { value, better } = held
  const mean = inUnit(row.mean ?? Number.NaN, held)
  const sd = row.sd === null ? null : inUnit(row.sd, held)
  const z = sd === null || sd <= 0 ? null : (value - mean) / sd
  const performanceZ = z === null ? null : asPerformance(z, better)
  const standing = z === null ? null : percentileOf(performanceZ ?? z, row.n)
  return {
    ...NOTHING,
    mean,
    sd,
    z,
    performanceZ,
    percentile: standing?.percentile ?? null,
    percentileInterval: standing?.interval ? [...standing.interval] : null,
    definition: standing?.definition ?? 'normal',
  }
}

/** Ranks are counted from the lowest value up, percentiles from the worse performance up. */
function byPercentiles(row: NormRow, held: Held): Figures {
  const { value, better } = held
  const table: Tabulated[] = row.percentiles.map((one) => ({
    rank: one.rank,
    value: inUnit(one.value, held),
  }))
  const { rank, under, over } = rankInTable(table, value)
  const isTurned = better === 'lower'
  const turned = (one: number) => (isTurned ? 100 - one : one)
  const outermost = under === null ? over : over === null ? under : null
  const isBelow = under === null
  return {
    ...NOTHING,
    percentile: rank === null ? null : turned(rank),
    definition: 'tabulated',
    figures: {
      statistic: 'percentiles',
      under,
      over,
      beyond:
        outermost === null
          ? null
          : { side: isBelow === isTurned ? 'above' : 'below', rank: turned(outermost.rank) },
    },
  }
}

function byLms(row: NormRow, held: Held): Figures {
  const stated = row.lms ?? { l: Number.NaN, m: Number.NaN, s: Number.NaN }
  const inScore = { ...stated, m: inUnit(stated.m, held) }
  const z = lmsScore(held.value, inScore)
  const performanceZ = z === null ? null : asPerformance(z, held.better)
  return {
    ...NOTHING,
    figures: { statistic: 'lms', ...inScore },
    z,
    performanceZ,
    percentile: z === null ? null : 100 * normalCdf(performanceZ ?? z),
    definition: 'lms',
  }
}

function byCutOff(row: NormRow, held: Held): Figures {
  const stated = row.cutOff ?? { value: Number.NaN, below: '', above: '', equal: 'below' as const }
  const cut = inUnit(stated.value, held)
  const side = held.value === cut ? stated.equal : held.value < cut ? 'below' : 'above'
  return { ...NOTHING, figures: { statistic: 'cut-offs', cut, side, band: wordsOf(stated[side], held) } }
}

function byBands(rows: readonly NormRow[], first: NormRow, held: Held): Figures & { readonly row: NormRow } {
  const edge = (value: number | null) => (value === null ? null : inUnit(value, held))
  const bands = rows.flatMap((row) =>
    row.band === null
      ? []
      : [{ row, id: row.band.id, from: edge(row.band.from), below: edge(row.band.below) }],
  )
  const found = bands.find(
    ({ from, below }) => (from === null || held.value >= from) && (below === null || held.value < below),
  )
  const figures = {
    statistic: 'bands' as const,
    band: found === undefined ? null : wordsOf(found.id, held),
    from: found?.from ?? null,
    below: found?.below ?? null,
  }
  return { ...NOTHING, row: found?.row ?? first, figures }
}

function wordsOf(id: string, { norm, say }: Held): string {
  const words = Object.hasOwn(norm.bands, id) ? norm.bands[id] : undefined
  return words === undefined ? id : say(words)
}
