/** The earlier values of a test's scores, for charts. */
import type { Output } from '../contract/procedures.ts'
import type { AdministrationRow, Records, ScoreRow } from '../records/index.ts'
import { isBefore } from './earlier.ts'
import { keptProtocol } from './kept.ts'

type History = Output<'history.read'>
type Point = History[number]['points'][number]

const majorOf = (version: string) => version.split('.')[0]

/** Every shown score of what a client finished of a protocol, oldest first. */
export function historyOf(records: Records, client: string, protocol: string): History {
  const given = records.read
    .administrationsOf(client)
    .filter((row) => row.protocol === protocol && !row.enteredInError && row.finishedAt !== null)
    .sort((a, b) => (isBefore(a, b) ? -1 : 1))
  return given.length ? seriesOf(records, given) : []
}

function seriesOf(records: Records, given: readonly AdministrationRow[]): History {
  const hidden = hiddenScores(records, given.at(-1))
  const scores = new Map<string, History[number]>()
  const last = new Map<string, AdministrationRow>()
  for (const row of given) {
    for (const score of records.read.scoresOf(row.id)) {
      if (hidden.has(score.score)) continue
      const { title, unit, decimals, better } = score
      const entry = scores.get(score.score) ?? {
        score: score.score,
        points: [],
        title,
        unit,
        decimals,
        better,
      }
      // The newest version says how the score is called and counted.
      Object.assign(entry, { title, unit, decimals, better })
      const series = JSON.stringify([score.score, score.place])
      entry.points.push(pointOf(row, score, last.get(series) ?? null))
      last.set(series, row)
      scores.set(score.score, entry)
    }
  }
  return [...scores.values()]
}

function pointOf(row: AdministrationRow, score: ScoreRow, before: AdministrationRow | null): Point {
  return {
    administration: row.id,
    at: row.startedAt,
    on: row.on,
    place: { ...score.place },
    value: score.value,
    over: score.over,
    version: row.version,
    joins:
      before === null || (before.basis === row.basis && majorOf(before.version) === majorOf(row.version)),
    deviations: row.deviations,
  }
}

/** Scores that only serve others are not for looking at. */
function hiddenScores(records: Records, newest: AdministrationRow | undefined): ReadonlySet<string> {
  const files = newest && records.read.protocolFiles(newest.hash)
  if (!files) return new Set()
  return new Set(keptProtocol(files).protocol.scores.flatMap(({ name, shown }) => (shown ? [] : [name])))
}
