import { PROGRAM } from '../program.ts'
import { clockTime, day, offset } from './figures.ts'
import type { ReportInput } from './input.ts'
import { namesOf } from './names.ts'
import { type Block, note, type Page } from './page.ts'
import { changeOf, errorOf } from './sections/change.ts'
import { cautionsOf, conditionsOf, precautionsOf, sourcesOf } from './sections/conditions.ts'
import { departuresOf } from './sections/departures.ts'
import { factsOf } from './sections/facts.ts'
import { historyOf } from './sections/history.ts'
import { unverifiedNormsOf, verifiedNormsOf } from './sections/norms.ts'
import { ratersOf } from './sections/raters.ts'
import { trialsOf } from './sections/trials.ts'
import { valuesOf } from './sections/values.ts'
import { LANGUAGE, say } from './words.ts'

function markOf({ demo, result }: ReportInput): string | null {
  const marks = [...(result.rehearsal ? [say('mark.rehearsal')] : []), ...(demo ? [say('mark.demo')] : [])]
  return marks.length ? marks.join(' · ') : null
}

/** The sections in the order in which they are read: what was measured first, what nobody verified last. */
function blocksOf(input: ReportInput): Block[] {
  const { result, protocol, view } = input
  const names = namesOf(protocol, result.protocol.wording)
  return [
    ...(view.phase === 'withdrawn' ? [note(say('withdrawn'))] : []),
    ...(result.complete ? [] : [note(say('incomplete'))]),
    ...valuesOf(result),
    ...trialsOf(input),
    ...departuresOf(input),
    ...ratersOf(input),
    ...verifiedNormsOf(result, names),
    ...changeOf(result, names),
    ...historyOf(input),
    ...conditionsOf(input, names),
    ...precautionsOf(input),
    ...unverifiedNormsOf(result, names),
    ...errorOf(input, names),
    ...cautionsOf(input),
    ...sourcesOf(input, names),
  ]
}

/** `Page {page} of {pages}` in the pieces around its numbers, which only the typesetter knows. */
function pageWords(): readonly [string, string, string] {
  const [before = '', between = '', after = ''] = say('page', { page: '\n', pages: '\n' }).split('\n')
  return [before, between, after]
}

/** A report as words and figures in order, ready to be set. */
export function pageOf(input: ReportInput): Page {
  const { result, now } = input
  const mark = markOf(input)
  const title = { test: result.protocol.title, day: day(result.on) }
  return {
    language: LANGUAGE,
    title: mark ? say('title.marked', { ...title, mark }) : say('title', title),
    author: say('author', { program: PROGRAM.name, version: PROGRAM.version }),
    mark,
    lead: say(input.view.phase === 'withdrawn' ? 'lead.withdrawn' : 'lead'),
    heading: result.protocol.title,
    facts: factsOf(input),
    blocks: blocksOf(input),
    made: say('made', {
      day: day(now),
      time: clockTime(now),
      offset: offset(now),
      administration: result.administration,
    }),
    footer: say('footer', { program: PROGRAM.name, version: PROGRAM.version }),
    pageWords: pageWords(),
    unprintableWords: say('unprintable'),
  }
}
