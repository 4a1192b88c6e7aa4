import type { Change, ErrorOfValue, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { amount, day, reasonWords, scoreAmount, unitWords, whereOf } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import type { Names } from '../names.ts'
import { type Block, heading, lines, narrow, note, numeric, paragraph, table, wide } from '../page.ts'
import { say } from '../words.ts'
import { conditionWords } from './norms.ts'
import { valueWords } from './values.ts'

type Figure = Change['figures'][number]
type Caution = Change['cautions'][number]

const placeWords = (score: ScoreValue) =>
  [score.title, whereOf(score)].filter((one) => one !== null).join(', ')

function differenceWords(score: ScoreValue, change: Change): string {
  const { difference, earlier, towards } = change
  const direction =
    difference === null ? 'open' : difference === 0 ? 'same' : difference > 0 ? 'more' : 'less'
  const size = difference === null ? 0 : Math.abs(difference)
  return say('change.difference', {
    where: placeWords(score),
    now: valueWords(score),
    before: amount(earlier.value, score.decimals, score.unit, earlier.over),
    day: day(earlier.on),
    direction,
    difference: amount(size, score.decimals, score.unit, change.differenceOver),
    towards: towards ?? 'none',
    sentence: reasonWords('change_sentence', change.sentence),
  })
}

function cautionWords(caution: Caution, names: Names): string {
  const condition = caution.detail['condition']
  const worded = typeof condition === 'string' ? conditionWords(names, condition, caution.detail) : {}
  return reasonWords('change_caution', caution, worded)
}

/** A figure as printed, its unit in words. */
function printedWords(printed: string): string {
  const [number = '', unit = '1'] = printed.split(' ')
  return say('value', { number, unit: unitWords(unit, Number(number)), over: 'no' })
}

/** Whom a figure was gathered on and where it is published. */
const peopleWords = (figure: Figure | ErrorOfValue, names: Names): string =>
  say('figure.people', {
    population: figure.population,
    n: figure.n ?? 'none',
    reference: names.reference(figure.source),
    provenance: figure.provenance,
  })

/** Cautions that all of them share, and what is left of each one's own. */
function shared(these: readonly { readonly cautions: readonly Caution[] }[], names: Names) {
  const each = these.map((one) => one.cautions.map((caution) => cautionWords(caution, names)))
  const all = (each[0] ?? []).filter((words) => each.every((one) => one.includes(words)))
  return { all, own: (index: number) => (each[index] ?? []).filter((words) => !all.includes(words)) }
}

function figureTable(score: ScoreValue, change: Change, names: Names): Block[] {
  if (change.figures.length === 0) return []
  const cautions = shared(change.figures, names)
  const columns = [
    narrow(say('column.figure')),
    numeric(say('column.threshold')),
    wide(say('column.people')),
    narrow(say('column.exceeded')),
  ]
  const rows = change.figures.map((figure, index) => [
    say('figure.name', { statistic: figure.statistic, printed: printedWords(figure.printed) }),
    figure.threshold === null ? say('unknown') : scoreAmount(score, figure.threshold),
    [peopleWords(figure, names), ...cautions.own(index)].join('. '),
    say('exceeded', { exceeded: figure.exceeded === null ? 'open' : figure.exceeded ? 'yes' : 'no' }),
  ])
  return [table(placeWords(score), columns, rows), ...lines(cautions.all, true)]
}

/** Each shown score beside the last time, with every published figure for its error that applies. */
export function changeOf(result: Result, names: Names): Block[] {
  const changed = result.scores
    .filter((score) => score.shown)
    .flatMap((score) => score.change.slice(0, 1).map((change) => ({ score, change })))
  if (changed.length === 0) return []
  const cautions = shared(
    changed.map(({ change }) => change),
    names,
  )
  return [
    heading(say('change')),
    ...changed.flatMap(({ score, change }, index) => [
      paragraph(differenceWords(score, change)),
      ...lines(cautions.own(index), true),
      ...figureTable(score, change, names),
    ]),
    ...lines(cautions.all, true),
  ]
}

/** A value's interval, within what the protocol allows the score to be. */
function intervalWords(score: ScoreValue, half: number, range: readonly [number, number] | null): string {
  const { value = 0 } = score
  const low = Math.max((value ?? 0) - half, range?.[0] ?? Number.NEGATIVE_INFINITY)
  const high = Math.min((value ?? 0) + half, range?.[1] ?? Number.POSITIVE_INFINITY)
  return say('error.interval', {
    where: whereOf(score) ?? say('where.whole'),
    low: amount(low, score.decimals, '1'),
    high: scoreAmount(score, high),
  })
}

/** The error of a single value by each published figure: the other of the two intervals that a value has. */
export function errorOf({ result, protocol }: ReportInput, names: Names): Block[] {
  const all = result.scores
    .filter((score) => score.shown)
    .flatMap((score) => score.error.map((error) => ({ score, error })))
  if (all.length === 0) return [heading(say('error')), note(say('error.none'))]
  const alike = Map.groupBy(all, ({ score, error }) =>
    [score.score, error.statistic, error.printed, error.population, error.source].join('\n'),
  )
  const rows = [...alike.values()].flatMap((these) => {
    const [first] = these
    if (!first) return []
    const range = protocol.scores.find((score) => score.name === first.score.score)?.range ?? null
    return [
      [
        first.score.title,
        say('figure.name', { statistic: first.error.statistic, printed: printedWords(first.error.printed) }),
        peopleWords(first.error, names),
        these.map(({ score, error }) => intervalWords(score, error.half, range)).join('; '),
      ],
    ]
  })
  const columns = [
    narrow(say('column.score')),
    narrow(say('column.figure')),
    wide(say('column.people')),
    narrow(say('column.error')),
  ]
  return [heading(say('error'), say('error.hint')), table(say('error'), columns, rows)]
}
