import { apartByNeeds } from '../../protocols/scoring/not-worked-out.ts'
import type { Result, ScoreValue } from '../../protocols/scoring/result.ts'
import { day, listed, offset, whereOf } from './figures.ts'
import { deviationWords } from './sections/departures.ts'
import { markWords, missingWords, told, valueWords } from './sections/values.ts'
import { say } from './words.ts'

/** A record's entry field is small, and what doesn't fit is cut off there unseen. */
const MOST_LINES = 6

function placeWords(score: ScoreValue, result: Result): string {
  const where = whereOf(score)
  const reason = missingWords(score)
  const marks = markWords(score, result).join('; ')
  const plain = marks ? say('short.marked', { value: valueWords(score), marks }) : valueWords(score)
  const value = reason ? say('short.none', { reason }) : plain
  return where ? say('short.value', { where, value }) : value
}

/** One score on one line: all its places. */
const scoreLine = (scores: readonly ScoreValue[], result: Result): string =>
  say('short.score', {
    title: scores[0]?.title ?? '',
    values: listed(scores.map((score) => placeWords(score, result))),
  })

/**
 * The text for the record: at most six lines with the test, its version, the day, every shown score as measured
 * with unit and hand or why a hand has none, and what went otherwise than the protocol says. Nothing that is compared stands in it, so
 * no figure of a table that nobody here has verified.
 */
export function shortText(result: Result): string {
  const head = say('short.head', {
    title: result.protocol.title,
    version: result.protocol.version,
    day: day(result.on),
    offset: result.startedAt.startsWith(result.on) ? offset(result.startedAt) : 'none',
    examiner: result.examiner,
  })
  const worked = apartByNeeds(result.scores).told
  // What could not be worked out anyhow says nothing, unless nothing else is there to say.
  const { valued, valueless } = told(worked.length ? worked : result.scores)
  const scores = [
    ...[...Map.groupBy(valued, (score) => score.score).values()].map((alike) => scoreLine(alike, result)),
    ...valueless.map(({ titles, reason }) => say('short.missing', { scores: listed(titles), reason })),
  ]
  const departures = say('short.deviations', {
    count: result.deviations.length,
    list: result.deviations.map((one) => deviationWords(one).replace(/\.$/, '')).join('; '),
  })
  // What was not given to its end was not given as the protocol says either.
  const isAsSaid = result.complete || result.deviations.length > 0
  const around = [
    ...(isAsSaid ? [departures] : []),
    ...(result.complete ? [] : [say('short.incomplete')]),
  ].join(' ')
  const marked = result.rehearsal ? [say('short.rehearsal')] : []
  const room = MOST_LINES - 2 - marked.length
  const kept =
    scores.length <= room ? scores : [...scores.slice(0, room - 1), scores.slice(room - 1).join(' ')]
  return [...marked, head, ...kept, around].map(oneLine).join('\n')
}

/** Line breaks inside a text would make lines of their own. */
const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim()
