import { apartByNeeds } from '../../../protocols/scoring/not-worked-out.ts'
import { marksOf } from '../../../protocols/scoring/marks.ts'
import type { Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { Table } from '../../parts/table.tsx'
import { listed, say } from '../../words/index.ts'
import { Changes } from './changes.tsx'
import { direction } from './tell-change.ts'
import { tellPasses } from '../../steps/place-words.ts'
import { tellNumber, tellUnit, tellValue } from '../../steps/tell.ts'
import { uncertaintyNotes } from '../../../protocols/scoring/uncertainty/notes.ts'
import { tellHalf, tellMeasured, tellReason } from './tell.ts'

/** Scores of one name stand together: usually one a hand. */
function grouped(scores: readonly ScoreValue[]): readonly (readonly ScoreValue[])[] {
  return [...Map.groupBy(scores, ({ score }) => score).values()]
}

const placeOf = (score: ScoreValue): string => Object.values(score.place).join(' ')

/** Which trials a value rests on, by the numbers that the list of trials gives them. */
function tellTrials(score: ScoreValue, result: Result): string {
  const numbers = score.trials
    .map((id) => result.trials.findIndex((trial) => trial.id === id) + 1)
    .filter((number) => number > 0)
  if (numbers.length === 0) return ''
  const from = say('result.from_trials', { count: numbers.length, trials: numbers.join(', ') })
  const marks = marksOf(score, result.trials).map((mark) => say(`result.mark.${mark}`))
  return marks.length === 0 ? from : say('result.from_marked', { from, marks: listed(marks) })
}

function tellOtherHand(score: ScoreValue): string {
  const { otherHand, decimals, unit } = score
  if (otherHand === null) return ''
  if (otherHand.withheld !== null) return tellReason('other_hand', otherHand.withheld)
  if (otherHand.value === null || otherHand.difference === null) return ''
  const values = {
    value: tellValue(otherHand.value, decimals, unit),
    difference: tellValue(Math.abs(otherHand.difference), decimals, unit),
    direction: direction(otherHand.difference, decimals),
  }
  const said =
    otherHand.ratio === null
      ? say('result.other_hand', values)
      : say('result.other_hand_ratio', { ...values, ratio: tellNumber(otherHand.ratio, 2) })
  const half = otherHand.uncertainty?.difference ?? null
  if (half === null) return said
  const within = Math.abs(otherHand.difference) <= half ? 'yes' : 'no'
  return say('result.apart_error', { said, half: tellHalf(half, decimals, unit), within })
}

/** What ± is, and what shifts all times, said once under all values. */
function UncertaintyNotes({ result }: { result: Result }) {
  return uncertaintyNotes(
    result.scores.filter(({ shown }) => shown),
    result.timing,
  ).map(({ code, detail }) => (
    <p key={`${code} ${Object.values(detail).join(' ')}`} className="soft">
      {say(`result.uncertainty.${code}`, detail)}
    </p>
  ))
}

function Group({ scores, result }: { scores: readonly ScoreValue[]; result: Result }) {
  const [first] = scores
  if (first === undefined) return null
  const hasOther = scores.some((score) => score.otherHand !== null)
  const columns = [
    { id: 'place', title: say('result.where') },
    { id: 'value', title: say('result.value'), isNumber: true },
    { id: 'trials', title: say('result.rests_on') },
    ...(hasOther ? [{ id: 'other', title: say('result.beside_other') }] : []),
  ]
  const rows = scores.map((score) => ({
    id: placeOf(score) || score.score,
    cells: [
      tellPasses(score.passes) || say('result.whole_test'),
      <span key="value" className={score.value === null ? 'result-none' : 'result-value'}>
        {tellMeasured(score)}
      </span>,
      tellTrials(score, result),
      ...(hasOther ? [tellOtherHand(score)] : []),
    ],
  }))
  return (
    <section className="result-score" aria-label={first.title}>
      <h3>{first.title}</h3>
      <p className="soft">{say(`result.better_${first.better}`, { unit: tellUnit(first.unit) || 'none' })}</p>
      <Table caption={first.title} columns={columns} rows={rows} />
      <Changes scores={scores} result={result} />
    </section>
  )
}

/** Raw values first: what was measured, which trials it rests on, the other hand, the last time. */
export function Scores({ result }: { result: Result }) {
  const { told, notWorkedOut } = apartByNeeds(result.scores)
  if (told.length + notWorkedOut.length === 0) return <p>{say('result.no_scores')}</p>
  return (
    <>
      {grouped(told).map((scores) => (
        <Group key={scores[0]?.score} scores={scores} result={result} />
      ))}
      <UncertaintyNotes result={result} />
      {notWorkedOut.length === 0 ? null : (
        <p className="soft">
          {say('result.not_worked_out', { count: notWorkedOut.length, scores: listed(notWorkedOut) })}
        </p>
      )}
    </>
  )
}
