import type { NormComparison, NormFigures, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { amount, plain, reasonWords, whereOf } from '../figures.ts'
import type { Names } from '../names.ts'
import { type Block, heading, lines, narrow, numeric, note, part, table, wide } from '../page.ts'
import { say } from '../words.ts'
import { figuresWords, rank, rankWords } from './norm-figures.ts'
import { valueWords } from './values.ts'

type Stratum = NormComparison['strata'][number]
interface Compared {
  readonly score: ScoreValue
  readonly norm: NormComparison
}

function agesOf({ ageMin, ageMax }: Stratum): string {
  if (ageMin === null && ageMax === null) return say('ages.any')
  if (ageMin === null) return say('ages.to', { to: String(ageMax) })
  if (ageMax === null) return say('ages.from', { from: String(ageMin) })
  if (ageMin === ageMax) return say('ages.one', { from: String(ageMin) })
  return say('ages', { from: String(ageMin), to: String(ageMax) })
}

function stratumWords(stratum: Stratum): string {
  const row = say('norm.row', { sex: stratum.sex, ages: agesOf(stratum), hand: stratum.hand })
  const chosen = Object.entries(stratum.chosenBy).map((cell) => cell.map(plain).join(' '))
  const whom = chosen.length ? say('norm.row.chosen', { row, chosen: chosen.join(', ') }) : row
  return stratum.provenance === 'memory' ? say('norm.row.memory', { row: whom }) : whom
}

function percentileWords({ percentile, percentileInterval }: Stratum): string {
  if (percentile === null) return ''
  const own = rank(percentile)
  if (!percentileInterval) return say('percentile.no_interval', { percentile: own })
  const [low, high] = percentileInterval
  return say('percentile.interval', { percentile: own, low: rank(low), high: rank(high) })
}

const bare = (value: number | null, decimals: number) => (value === null ? '' : amount(value, decimals, '1'))

const whereWords = ({ score }: Compared) => whereOf(score) ?? say('where.whole')

/** So many rows that may apply are listed; more are told by their span, which fits a page. */
const LISTED = 8

const span = (values: readonly (number | null)[], words: (value: number) => string): string => {
  const known = values.filter((value) => value !== null).sort((a, b) => a - b)
  const [low, high] = [known[0], known.at(-1)]
  if (low === undefined || high === undefined) return ''
  return low === high ? words(low) : say('range', { low: words(low), high: words(high) })
}

/** All rows that may apply as one: from the lowest to the highest of each column. */
function spanRow(strata: readonly Stratum[], decimals: number): string[] {
  const of = (pick: (stratum: Stratum) => number | null, places: number) =>
    span(strata.map(pick), (value) => bare(value, places))
  return [
    say('norm.rows', { count: strata.length }),
    of((one) => one.n, 0),
    of((one) => one.mean, decimals + 1),
    of((one) => one.sd, decimals + 1),
    of((one) => one.z, 2),
    span(
      strata.map((one) => one.percentile),
      rank,
    ),
  ]
}

/** Rows of tables that state other figures than mean and SD. */
const figuresRow = (stratum: Stratum, figures: NormFigures, decimals: number): string[] => [
  stratumWords(stratum),
  bare(stratum.n, 0),
  figuresWords(stratum, figures, decimals),
  rankWords(stratum.percentile, figures),
]

const stratumRow = (stratum: Stratum, decimals: number): string[] => [
  stratumWords(stratum),
  bare(stratum.n, 0),
  bare(stratum.mean, decimals + 1),
  bare(stratum.sd, decimals + 1),
  bare(stratum.z, 2),
  percentileWords(stratum),
]

function rowsOf(compared: readonly Compared[]): string[][] {
  return compared.flatMap((one) => {
    const { score, norm } = one
    const { decimals } = score
    const rows =
      norm.statistic === 'mean-sd' && norm.strata.length > LISTED
        ? [spanRow(norm.strata, decimals)]
        : norm.strata.map((stratum) =>
            stratum.figures === null
              ? stratumRow(stratum, decimals)
              : figuresRow(stratum, stratum.figures, decimals),
          )
    return rows.map((row) => [whereWords(one), valueWords(score), ...row])
  })
}

/** What to keep in mind, and why there is no comparison: once where it holds for all, else with the place. */
function cautionsOf(compared: readonly Compared[], names: Names): string[] {
  const told = compared.flatMap((one) => {
    const { norm } = one
    const status = norm.status === 'used' ? [] : [say(`norm.status.${norm.status}`)]
    const cautions = norm.caution.map((caution) => {
      const condition = caution.detail['condition']
      const worded = typeof condition === 'string' ? conditionWords(names, condition, caution.detail) : {}
      return reasonWords('norm_caution', caution, worded)
    })
    return [...status, ...cautions].map((words) => ({ words, where: whereWords(one) }))
  })
  return [...new Set(told.map((one) => one.words))].map((words) => {
    const places = told.filter((one) => one.words === words).map((one) => one.where)
    return places.length === compared.length
      ? words
      : say('value.named', { name: places.join(', '), value: words })
  })
}

/** The words of a condition's options, as a caution names them by their ids. */
export function conditionWords(
  names: Names,
  condition: string,
  detail: Readonly<Record<string, string | number>>,
): Record<string, string> {
  const stood = ['here', 'there', 'before', 'now'].flatMap((when) => {
    const option = detail[when]
    return typeof option === 'string' ? [[when, names.condition(condition, option)] as const] : []
  })
  return Object.fromEntries(stood)
}

const WHOM = () => [
  narrow(say('column.where')),
  numeric(say('column.value')),
  wide(say('column.norm')),
  numeric(say('column.n')),
]

const OF_FIGURES = () => [...WHOM(), wide(say('column.figures')), numeric(say('column.rank'))]

const OF_MEANS = () => [
  ...WHOM(),
  numeric(say('column.mean')),
  numeric(say('column.sd')),
  numeric(say('column.z')),
  numeric(say('column.percentile')),
]

function oneNorm(compared: readonly Compared[], names: Names): Block[] {
  const [first] = compared
  if (!first) return []
  const { norm, score } = first
  const title = say('value.named', { name: score.title, value: norm.title })
  const rows = rowsOf(compared)
  const standing = say(`norm.standing.${norm.standing}`, { by: norm.verifiedBy ?? '' })
  return [
    part(title),
    note(
      say('norm.about', {
        population: norm.population.trim().replace(/\.$/, ''),
        reference: names.reference(norm.source.cite),
        standing,
      }),
    ),
    ...(rows.length ? [table(title, norm.statistic === 'mean-sd' ? OF_MEANS() : OF_FIGURES(), rows)] : []),
    ...lines(cautionsOf(compared, names), true),
  ]
}

/** How z and percentile are meant, for the rows that are shown. */
function definitions(compared: readonly Compared[]): Block[] {
  const strata = compared.flatMap(({ score, norm }) => norm.strata.map((stratum) => ({ score, stratum })))
  const meant = strata.flatMap(({ stratum: { definition, z, percentile } }) =>
    definition === 'none' || (z === null && percentile === null) ? [] : [say(`definition.${definition}`)],
  )
  if (meant.length === 0) return []
  const z = strata
    .filter(({ stratum }) => stratum.z !== null)
    .map(({ score }) => say('definition.z', { better: score.better }))
  const hasInterval = strata.some(({ stratum }) => stratum.percentileInterval !== null)
  return [
    note([...new Set([...z, ...meant]), ...(hasInterval ? [say('definition.interval')] : [])].join(' ')),
  ]
}

function normBlocks(result: Result, names: Names, verified: boolean): Block[] {
  const compared = result.scores
    .filter((score) => score.shown)
    .flatMap((score) => score.norms.map((norm) => ({ score, norm })))
    .filter(({ norm }) => (norm.standing === 'verified') === verified)
  const byNorm = Map.groupBy(compared, ({ score, norm }) => `${score.score} ${norm.norm}`)
  return [...[...byNorm.values()].flatMap((one) => oneNorm(one, names)), ...definitions(compared)]
}

/** What tables say that a named person of this clinic has held against their sources. */
export function verifiedNormsOf(result: Result, names: Names): Block[] {
  const blocks = normBlocks(result, names, true)
  return [heading(say('norms')), ...(blocks.length ? blocks : [note(say('norms.none'))])]
}

/** What the other tables say: lower down, under a heading that says what they are. */
export function unverifiedNormsOf(result: Result, names: Names): Block[] {
  const blocks = normBlocks(result, names, false)
  return blocks.length ? [heading(say('unverified'), say('unverified.hint')), ...blocks] : []
}
