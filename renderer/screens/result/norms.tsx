import { apartByNeeds } from '../../../protocols/scoring/not-worked-out.ts'
import { placesOf } from '../../../protocols/scoring/rounding.ts'
import type { NormComparison, NormFigures, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { NormStrip } from '../../charts/norm-strip.tsx'
import { go } from '../../app/route.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/page.tsx'
import { say } from '../../words/index.ts'
import { tellPasses } from '../../steps/place-words.ts'
import { tellNumber, tellValue } from '../../steps/tell.ts'
import { tellReason, tellScore, tellSource } from './tell.ts'
import { tellByTable, tellFigures, tellPercentile } from './tell-figures.ts'

type Stratum = NormComparison['strata'][number]

interface Compared {
  readonly score: ScoreValue
  readonly norm: NormComparison
}

const isVerified = (norm: NormComparison): boolean => norm.standing === 'verified'

function compared(result: Result, verified: boolean): readonly Compared[] {
  return apartByNeeds(result.scores)
    .told.flatMap((score) => score.norms.map((norm) => ({ score, norm })))
    .filter(({ norm }) => isVerified(norm) === verified)
}

function tellAges({ ageMin, ageMax }: Stratum): string {
  const ages = { from: ageMin ?? 0, to: ageMax ?? 0 }
  if (ageMin === null) return say(ageMax === null ? 'result.ages_any' : 'result.ages_to', ages)
  return say(ageMax === null ? 'result.ages_from' : 'result.ages', ages)
}

/** The row used, in words: whom it describes, how many, their mean and spread, and its line in the table. */
function tellRow(stratum: Stratum, score: ScoreValue): string {
  const { decimals, unit } = score
  return say('result.row', {
    sex: stratum.sex,
    hand: stratum.hand,
    ages: tellAges(stratum),
    provenance: stratum.provenance,
    n: stratum.n === null ? say('result.unknown') : String(stratum.n),
    mean: stratum.mean === null ? say('result.unknown') : tellValue(stratum.mean, decimals + 1, unit),
    sd: stratum.sd === null ? say('result.unknown') : tellValue(stratum.sd, decimals + 1, unit),
    line: stratum.line,
  })
}

const DEFINITIONS: Readonly<Record<string, () => string>> = {
  normal: () => say('result.definition_normal'),
  'modified-t': () => say('result.definition_modified_t'),
  lms: () => say('result.definition_lms'),
}

function tellStanding(stratum: Stratum): string | null {
  if (stratum.z === null || stratum.percentile === null) return null
  const values = {
    z: tellNumber(stratum.z, 2),
    better: stratum.performanceZ === null ? say('result.unknown') : tellNumber(stratum.performanceZ, 2),
    percentile: tellPercentile(stratum.percentile),
  }
  if (stratum.percentileInterval === null) return say('result.standing', values)
  const [low, high] = stratum.percentileInterval
  return say('result.standing_interval', { ...values, low: tellPercentile(low), high: tellPercentile(high) })
}

/** Ages, hand and the table's own columns of a row, with what it states. */
function tellWhom(stratum: Stratum, figures: string | null): string {
  const chosen = Object.entries(stratum.chosenBy).map((cell) => cell.join(' ').replaceAll('_', ' '))
  return say('result.whom', {
    sex: stratum.sex,
    hand: stratum.hand,
    ages: tellAges(stratum),
    chosen: chosen.join(', ') || 'none',
    n: stratum.n === null ? say('result.unknown') : String(stratum.n),
    figures: figures ?? 'none',
    provenance: stratum.provenance,
    line: stratum.line,
  })
}

function FiguresPart({ stratum, figures, score }: FiguresOf) {
  const told = tellFigures(figures, (value) => tellValue(value, placesOf(value, score.decimals), score.unit))
  const standing = tellByTable(stratum.percentile, figures) ?? tellStanding(stratum)
  return (
    <div className="result-stratum">
      <p>{tellWhom(stratum, told)}</p>
      {standing === null ? null : <p className="result-standing">{standing}</p>}
    </div>
  )
}

interface FiguresOf {
  readonly stratum: Stratum
  readonly figures: NormFigures
  readonly score: ScoreValue
}

function StratumPart({ stratum, score }: { stratum: Stratum; score: ScoreValue }) {
  const standing = tellStanding(stratum)
  if (stratum.figures !== null)
    return <FiguresPart stratum={stratum} figures={stratum.figures} score={score} />
  return (
    <div className="result-stratum">
      {standing === null ? null : <p className="result-standing">{standing}</p>}
      <p className="soft small">{tellRow(stratum, score)}</p>
      {score.value === null || stratum.mean === null || stratum.sd === null || stratum.z === null ? null : (
        <NormStrip
          value={score.value}
          over={score.over}
          mean={stratum.mean}
          sd={stratum.sd}
          title={say('result.strip_title', { title: score.title, place: tellPasses(score.passes) || 'none' })}
          description={`${tellRow(stratum, score)} ${standing ?? ''}`}
          showValue={(value) => tellNumber(value, score.decimals)}
          showStep={(step) =>
            say('result.strip_step', {
              side: step === 0 ? 'mean' : step > 0 ? 'above' : 'below',
              size: Math.abs(step),
            })
          }
        />
      )}
    </div>
  )
}

type Caution = NormComparison['caution'][number]
const keyOf = (caution: Caution): string => JSON.stringify(caution)

/** The cautions that hold for every one of the comparisons: said once. */
function common(all: readonly Compared[]): readonly Caution[] {
  const [first, ...rest] = all
  return (first?.norm.caution ?? []).filter((caution) =>
    rest.every(({ norm }) => norm.caution.some((each) => keyOf(each) === keyOf(caution))),
  )
}

function Cautions({ cautions }: { readonly cautions: readonly Caution[] }) {
  return cautions.map((caution) => (
    <p key={keyOf(caution)} className="result-caution">
      {tellReason('norm', caution)}
    </p>
  ))
}

/** One value beside one table. */
function ComparedPart({ score, norm, said }: Compared & { readonly said: readonly Caution[] }) {
  const place = tellPasses(score.passes) || 'none'
  const own = norm.caution.filter((caution) => !said.some((each) => keyOf(each) === keyOf(caution)))
  return (
    <div className="result-compared">
      <h4 className="result-place">
        {say('result.norm_value', { title: score.title, place, value: tellScore(score) })}
      </h4>
      {norm.status === 'used' ? null : <p>{say(`result.status.${norm.status}`)}</p>}
      <Cautions cautions={own} />
      {norm.strata.map((stratum) => (
        <StratumPart key={stratum.line} stratum={stratum} score={score} />
      ))}
    </div>
  )
}

/** How the percentiles beside a table were worked out: said once. */
const definitions = (all: readonly Compared[]): readonly Stratum['definition'][] => [
  ...new Set(
    all.flatMap(({ norm }) =>
      norm.strata.filter(({ percentile }) => percentile !== null).map(({ definition }) => definition),
    ),
  ),
]

/** One table: whom it describes, where it comes from, who has verified it, and every value held against it. */
function TablePart({ all, result }: { readonly all: readonly Compared[]; readonly result: Result }) {
  const [first] = all
  if (first === undefined) return null
  const { norm } = first
  const said = common(all)
  return (
    <section className="result-norm" aria-label={norm.title}>
      <h3>{norm.title}</h3>
      <p className={isVerified(norm) ? 'soft' : 'result-caution'}>
        {say(`result.norm_${norm.standing}`, { by: norm.verifiedBy ?? '' })}
      </p>
      <p className="soft">
        {say('result.norm_about', {
          population: norm.population.replace(/\.$/, ''),
          source: tellSource(norm.source.cite, result),
          note: norm.source.note,
        })}
      </p>
      <Cautions cautions={said} />
      <div className="result-places">
        {all.map((each) => (
          <ComparedPart
            key={`${each.score.score} ${Object.values(each.score.place).join(' ')}`}
            {...each}
            said={said}
          />
        ))}
      </div>
      {definitions(all).map((definition) => (
        <p key={definition} className="soft small">
          {DEFINITIONS[definition]?.()}
        </p>
      ))}
    </section>
  )
}

/** Tables in the order in which the protocol names them; those that have nothing to say come last. */
function byTable(all: readonly Compared[]): readonly (readonly Compared[])[] {
  const tables = Map.groupBy(all, ({ norm }) => norm.norm)
  const speaks = (table: readonly Compared[]): boolean => table.some(({ norm }) => norm.strata.length > 0)
  return [...tables.values()].sort((one, other) => Number(speaks(other)) - Number(speaks(one)))
}

/** The comparisons with verified tables, or, lower down, those whose tables nobody here has verified yet. */
export function Norms({ result, standing }: { result: Result; standing: 'verified' | 'unverified' }) {
  const found = compared(result, standing === 'verified')
  if (found.length === 0) return null
  return (
    <Section title={say(`result.norms_${standing}`)} hint={say(`result.norms_${standing}_hint`)}>
      {byTable(found).map((all) => (
        <TablePart key={all[0]?.norm.norm} all={all} result={result} />
      ))}
      <div>
        <Button look="quiet" onPress={() => go(`norms/${result.protocol.from}/${result.protocol.id}`)}>
          {say('norm_tables.open')}
        </Button>
      </div>
    </Section>
  )
}
