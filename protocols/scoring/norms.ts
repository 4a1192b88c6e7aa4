/** A score against the norms that the protocol names. */
import type { z } from 'zod'
import type { Side } from '../client.ts'
import type { Norm, NormRow, Protocol, Score, Text } from '../language/model.ts'
import { convert } from '../language/units.ts'
import { compareConditions } from './gathered.ts'
import { percentileOf } from './percentile.ts'
import type { missing, NormComparison } from './result.ts'
import { type Person, type Strata, strataOf } from './strata.ts'

type Caution = z.infer<typeof missing>
type Stratum = NormComparison['strata'][number]

/** The value that is compared, and all that the comparison depends on. */
export interface Comparand {
  readonly protocol: Protocol
  readonly score: Score
  /** The hand that the score is of; null: of no single hand. */
  readonly hand: Side | null
  /** Unrounded, in the score's unit. */
  readonly value: number | null
  readonly over: boolean
  readonly person: Person
  /** Condition name to what was recorded here. */
  readonly conditions: Readonly<Record<string, string>>
  /** How many deviations touch the norms, by what they do to them. */
  readonly deviations: { readonly withheld: number; readonly caution: number }
  /** Norm name to the person of the clinic who verified its table. */
  readonly verified: ReadonlyMap<string, string>
  /** Words of the protocol in the wording in use. */
  say(text: Text): string
}

/** Beyond so many standard deviations hardly anybody of a norm group is found. */
const FAR_OUT = 3

export function compareWithNorm(norm: Norm, comparand: Comparand): NormComparison {
  const { protocol, conditions, deviations, value, over } = comparand
  const compared = compareConditions(protocol, norm.gathered, conditions)
  const given = givenCautions(compared, deviations)
  const isWithheld = deviations.withheld > 0 || (compared.differing.length > 0 && norm.differs === 'withhold')
  if (isWithheld) return comparison(norm, comparand, { status: 'withheld', caution: given, strata: [] })
  if (value === null || over || comparand.person.isAgeImpossible) {
    const code = value === null ? 'no_value' : over ? 'bound' : 'age_impossible'
    const caution: Caution = { code, detail: {} }
    return comparison(norm, comparand, { status: 'unavailable', caution: [caution, ...given], strata: [] })
  }
  return withRows(norm, comparand, given)
}

function withRows(norm: Norm, comparand: Comparand, given: readonly Caution[]): NormComparison {
  const table = norm.rows.filter(({ mean }) => mean !== null)
  const found = strataOf(table, comparand.person, comparand.hand)
  const strata = found.rows.map((row) => stratumOf(row, norm, comparand)).filter((one) => one !== null)
  if (strata.length < found.rows.length) {
    const caution: Caution = { code: 'wrong_unit', detail: { unit: norm.unit } }
    return comparison(norm, comparand, { status: 'unavailable', caution: [caution, ...given], strata: [] })
  }
  const caution = [...personCautions(found, comparand), ...strataCautions(strata), ...given]
  return comparison(norm, comparand, { status: statusOf(found, strata), caution, strata })
}

function statusOf(found: Strata, strata: readonly Stratum[]): NormComparison['status'] {
  if (found.none !== null) return found.none
  if (strata.every(({ z }) => z === null)) return 'no_spread'
  return strata.length === 1 ? 'used' : 'several'
}

function comparison(
  norm: Norm,
  { protocol, verified, say }: Comparand,
  { status, caution, strata }: { status: NormComparison['status']; caution: Caution[]; strata: Stratum[] },
): NormComparison {
  const source = protocol.sources.find(({ id }) => id === norm.source)
  const verifiedBy = verified.get(norm.name) ?? null
  const rows = strata.length > 0 ? strata : norm.rows
  const seen = rows.every(({ provenance }) => provenance === 'seen')
  return {
    norm: norm.name,
    title: say(norm.title),
    population: say(norm.population),
    source: { id: norm.source, cite: source?.cite ?? norm.source, note: source?.note ?? '' },
    statistic: norm.as,
    standing: verifiedBy !== null ? 'verified' : seen ? 'seen' : 'memory',
    verifiedBy,
    status,
    caution,
    strata,
  }
}

/** Null where the table's unit doesn't convert to the score's. */
function stratumOf(row: NormRow, norm: Norm, { score, value }: Comparand): Stratum | null {
  const mean = convert(row.mean ?? 0, norm.unit, score.unit)
  const sd = row.sd === null ? null : convert(row.sd, norm.unit, score.unit)
  if (mean === null || (row.sd !== null && sd === null)) return null
  const z = sd === null || sd <= 0 || value === null ? null : (value - mean) / sd
  const performanceZ = z === null ? null : asPerformance(z, score.better)
  const standing = z === null ? null : percentileOf(performanceZ ?? z, row.n)
  const { sex, ageMin, ageMax, hand, n, line, provenance } = row
  return {
    sex,
    ageMin,
    ageMax,
    hand,
    n,
    mean,
    sd,
    line,
    provenance,
    z,
    performanceZ,
    percentile: standing?.percentile ?? null,
    percentileInterval: standing?.interval ? [...standing.interval] : null,
    definition: standing?.definition ?? 'normal',
  }
}

/** The one place where a direction is turned: z with better counted upwards; null for scores without a better. */
export function asPerformance(difference: number, better: Score['better']): number | null {
  if (better === 'none') return null
  // Adding zero keeps a turned zero from being written as minus nothing.
  return better === 'lower' ? -difference + 0 : difference
}

function givenCautions(
  { differing, unknown }: ReturnType<typeof compareConditions>,
  { withheld, caution }: Comparand['deviations'],
): Caution[] {
  const found: Caution[] = differing.map((detail) => ({ code: 'condition_differs', detail }))
  if (withheld > 0) found.push({ code: 'modified', detail: { count: withheld } })
  if (caution > 0) found.push({ code: 'deviated', detail: { count: caution } })
  if (unknown.length > 0)
    found.push({
      code: 'conditions_unknown',
      detail: { conditions: unknown.join(', '), count: unknown.length },
    })
  return found
}

function personCautions(found: Strata, { person, hand }: Comparand): Caution[] {
  const { rows, ages, none, isPartly } = found
  const cautions: Caution[] = []
  const differ = (key: 'ageMin' | 'sex' | 'hand') => new Set(rows.map((row) => row[key])).size > 1
  if (person.age === null) cautions.push({ code: 'age_unknown', detail: {} })
  else if (person.age.from !== person.age.to && (differ('ageMin') || isPartly))
    cautions.push({ code: 'age_uncertain', detail: { ...person.age } })
  if (person.sex === 'unknown' && (differ('sex') || isPartly))
    cautions.push({ code: 'sex_unknown', detail: {} })
  const bySide = rows.some((row) => row.hand === 'dominant' || row.hand === 'nondominant')
  if (hand !== null && person.dominant === null && bySide)
    cautions.push({ code: 'dominance_unknown', detail: {} })
  if (isPartly) cautions.push({ code: 'partly_without_row', detail: {} })
  if (none === 'out_of_range' && ages !== null) cautions.push(...tableAges(ages))
  return cautions
}

function tableAges({ from, to }: NonNullable<Strata['ages']>): Caution[] {
  if (from !== null && to !== null) return [{ code: 'table_ages', detail: { from, to } }]
  if (from !== null) return [{ code: 'table_from', detail: { from } }]
  return to === null ? [] : [{ code: 'table_to', detail: { to } }]
}

function strataCautions(strata: readonly Stratum[]): Caution[] {
  const cautions: Caution[] = []
  if (strata.some(({ n, z }) => n === null && z !== null)) cautions.push({ code: 'size_unknown', detail: {} })
  if (strata.some(({ z }) => z !== null && Math.abs(z) > FAR_OUT))
    cautions.push({ code: 'far_out', detail: {} })
  return cautions
}
