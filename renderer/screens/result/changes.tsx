import type { Change, Result, ScoreValue } from '../../../protocols/scoring/result.ts'
import { Table } from '../../parts/table.tsx'
import { tellPasses } from '../../steps/place-words.ts'
import { say } from '../../words/index.ts'
import { exceededWords, figureWords, peopleWords, tellChange } from './tell-change.ts'
import { type Reason, tellReason } from './tell.ts'

type Figure = Change['figures'][number]

interface Changed {
  readonly score: ScoreValue
  readonly change: Change
}

const keyOf = (reason: Reason): string => JSON.stringify(reason)

/** What is said of every one of them, and what is left of each one's own. */
function shared(all: readonly { readonly cautions: readonly Reason[] }[]) {
  const keys = all.map(({ cautions }) => new Set(cautions.map(keyOf)))
  const isCommon = (reason: Reason): boolean => keys.every((each) => each.has(keyOf(reason)))
  return {
    common: (all[0]?.cautions ?? []).filter(isCommon),
    own: (one: { readonly cautions: readonly Reason[] }) => one.cautions.filter((each) => !isCommon(each)),
  }
}

function Cautions({ reasons }: { readonly reasons: readonly Reason[] }) {
  return reasons.map((reason) => (
    <p key={keyOf(reason)} className="result-caution">
      {tellReason('caution', reason)}
    </p>
  ))
}

/** The same figure judges both hands: they share a row, each with a column of its own. */
const rowOf = ({ statistic, printed, population, source }: Figure): string =>
  [statistic, printed, population, source].join(' ')

function Figures({ changed, result }: { readonly changed: readonly Changed[]; readonly result: Result }) {
  const all = changed.flatMap(({ change }) => change.figures)
  if (all.length === 0) return null
  const { common, own } = shared(all)
  const rows = [...Map.groupBy(all, rowOf)].flatMap(([id, [figure]]) =>
    figure === undefined
      ? []
      : [
          {
            id,
            cells: [
              figureWords(figure),
              [
                peopleWords(figure, result),
                ...own(figure).map((reason) => tellReason('caution', reason)),
              ].join(' '),
              ...changed.map(({ score, change }) =>
                exceededWords(change.figures.find((each) => rowOf(each) === id) ?? null, score),
              ),
            ],
          },
        ],
  )
  const places = changed.map(({ score }) => ({
    id: Object.values(score.place).join(' ') || score.score,
    title: tellPasses(score.passes) || say('result.change_is'),
  }))
  return (
    <>
      <div className="result-figures">
        <Table
          caption={say('result.figures', { title: changed[0]?.score.title ?? '' })}
          columns={[
            { id: 'figure', title: say('result.figure_title') },
            { id: 'people', title: say('result.gathered_on') },
            ...places,
          ]}
          rows={rows}
        />
      </div>
      <Cautions reasons={common} />
    </>
  )
}

/** Beside earlier times: the sentence first, then what judges the change since the last time, each caution once. */
export function Changes({
  scores,
  result,
}: {
  readonly scores: readonly ScoreValue[]
  readonly result: Result
}) {
  const latest = scores.flatMap((score) => score.change.slice(0, 1).map((change) => ({ score, change })))
  if (latest.length === 0) return null
  const { common, own } = shared(latest.map(({ change }) => change))
  return (
    <div className="result-changes">
      {scores.map((score) =>
        score.change.map((change, index) => (
          <div key={`${Object.values(score.place).join(' ')} ${change.earlier.administration}`}>
            <p className={index === 0 ? undefined : 'soft'}>{tellChange(change, score)}</p>
            {index === 0 ? <Cautions reasons={own(change)} /> : null}
          </div>
        )),
      )}
      <Cautions reasons={common} />
      <Figures changed={latest} result={result} />
    </div>
  )
}
