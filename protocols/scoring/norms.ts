/** A score against the norms that the protocol names. */
import type { z } from 'zod'
import type { Side } from '../client.ts'
import type { Norm, NormColumn, NormRow, Protocol, Score, Text } from '../language/model.ts'
import { cellText, type Chosen } from './choosing.ts'
import { compareConditions } from './gathered.ts'
import { figuresOf, STATES } from './norm-figures.ts'
import type { missing, NormComparison } from './result.ts'
import { type ChosenBy, type Person, type Strata, strataOf } from './strata.ts'

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
  /** What a column of the table holds here; null where that isn't known. */
  choose(column: NormColumn): Chosen
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
  const { person, hand, value } = comparand
  const chosen: ChosenBy = new Map(norm.columns.map((column) => [column.column, comparand.choose(column)]))
  const found = strataOf(norm.rows.filter(STATES[norm.as]), person, { hand, chosen })
  const groups = [
    ...Map.groupBy(found.rows, (row) => (norm.as === 'bands' ? likeness(row) : String(row.line))).values(),
  ]
  const strata = groups
    .map((rows) => stratumOf(rows, norm, { ...comparand, value: value ?? Number.NaN }))
    .filter((one) => one !== null)
  if (strata.length < groups.length) {
    const caution: Caution = { code: 'wrong_unit', detail: { unit: norm.unit } }
    return comparison(norm, comparand, { status: 'unavailable', caution: [caution, ...given], strata: [] })
  }
  const caution = [
    ...personCautions(found, comparand),
    ...columnCautions(found, chosen),
    ...strataCautions(strata),
    ...given,
  ]
  return comparison(norm, comparand, { status: statusOf(found, strata), caution, strata })
}

/** Bands of one stratum are several rows. */
const likeness = ({ sex, ageMin, ageMax, hand, chosenBy }: NormRow): string =>
  JSON.stringify([sex, ageMin, ageMax, hand, chosenBy])

function statusOf(found: Strata, strata: readonly Stratum[]): NormComparison['status'] {
  if (found.none !== null) return found.none
  if (strata.every(({ figures, z }) => z === null && (figures === null || figures.statistic === 'lms')))
    return 'no_spread'
  if (strata.every(({ figures }) => figures?.statistic === 'bands' && figures.band === null)) return 'no_band'
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
function stratumOf(
  rows: readonly NormRow[],
  norm: Norm,
  { score, value, say }: Comparand & { readonly value: number },
): Stratum | null {
  const found = figuresOf(rows, { norm, better: score.better, value, unit: score.unit, say })
  if (found === null) return null
  const { row, ...figures } = found
  const { sex, ageMin, ageMax, hand, n, line, provenance } = row
  const cells = Object.entries(row.chosenBy).map(([column, cell]) => [column, cellText(cell)])
  return { sex, ageMin, ageMax, hand, chosenBy: Object.fromEntries(cells), n, line, provenance, ...figures }
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

/** Columns of which isn't known what they hold here, where they leave several rows open. */
function columnCautions({ rows }: Strata, chosen: ChosenBy): Caution[] {
  return [...chosen]
    .filter(([column, known]) => known === null && rows.some((row) => Object.hasOwn(row.chosenBy, column)))
    .map(([column]) => ({ code: 'column_unknown', detail: { column } }))
}

function tableAges({ from, to }: NonNullable<Strata['ages']>): Caution[] {
  if (from !== null && to !== null) return [{ code: 'table_ages', detail: { from, to } }]
  if (from !== null) return [{ code: 'table_from', detail: { from } }]
  return to === null ? [] : [{ code: 'table_to', detail: { to } }]
}

function strataCautions(strata: readonly Stratum[]): Caution[] {
  const cautions: Caution[] = []
  if (strata.some(({ n, z, figures }) => n === null && z !== null && figures === null))
    cautions.push({ code: 'size_unknown', detail: {} })
  if (strata.some(({ z }) => z !== null && Math.abs(z) > FAR_OUT))
    cautions.push({ code: 'far_out', detail: {} })
  if (strata.some(({ z, figures }) => z === null && figures?.statistic === 'lms'))
    cautions.push({ code: 'lms_undefined', detail: {} })
  return cautions
}
