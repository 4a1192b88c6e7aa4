import type { Birth } from '../../../protocols/client.ts'
import { clockTime, day, offset, plain } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import { hasWords, say } from '../words.ts'

function bornWords(born: Birth): string {
  if (born.known === 'date') return say('born.date', { day: day(born.date) })
  if (born.known === 'month') return say('born.month', { month: String(born.month), year: String(born.year) })
  if (born.known === 'year') return say('born.year', { year: String(born.year) })
  if (born.known === 'told') return say('born.told', { years: born.years, day: day(born.on) })
  return say('born.no')
}

function ageWords(age: ReportInput['result']['age']): string {
  if (!age) return say('age.unknown')
  return age.from === age.to
    ? say('age', { years: age.from })
    : say('age.range', { from: age.from, to: age.to })
}

/** From when to when it was given, as the clock of the place showed it, and the date it counts for. */
function givenWords({ startedAt, finishedAt, on }: ReportInput['result']): string {
  const start = { day: day(startedAt), time: clockTime(startedAt), offset: offset(startedAt) }
  const given = () => {
    if (!finishedAt) return say('time.open', start)
    const end = { end: clockTime(finishedAt), endDay: day(finishedAt), endOffset: offset(finishedAt) }
    const alike = start.day === end.endDay && start.offset === end.endOffset
    return say(alike ? 'time.span' : 'time.days', { ...start, ...end })
  }
  return startedAt.startsWith(on) ? given() : say('time.counted_for', { given: given(), day: day(on) })
}

/** Which hand came first and by which of the orders; an order without words is told by its name. */
function firstHandWords({ hand, rule }: NonNullable<ReportInput['view']['firstHand']>): string {
  const key = `order.${rule}`
  return say('first_hand', { hand, rule: hasWords(key) ? say(key) : plain(rule.replaceAll('-', ' ')) })
}

function sealWords(seal: ReportInput['seal']): string {
  if (!seal) return ''
  const { code, at } = seal
  return say('seal', { code, day: day(at), time: clockTime(at), offset: offset(at) })
}

/** Label and value pairs under the title: who, when, by whom, by what. */
export function factsOf({ result, person, clinic, view, seal }: ReportInput): (readonly [string, string])[] {
  const { protocol } = result
  const words = protocol.wording
    ? say('words.file', { file: plain(protocol.wording) })
    : say('words.own', { language: protocol.language })
  const about: readonly (readonly [string, string])[] = person
    ? [
        [say('fact.client'), person.name],
        [say('fact.born'), bornWords(person.born)],
        [say('fact.number'), person.number],
        [say('fact.second'), person.secondIdentifier],
      ]
    : [[say('fact.client'), say('fact.client.none')]]
  const first = view.firstHand
  const facts: readonly (readonly [string, string])[] = [
    ...about,
    [say('fact.age'), ageWords(result.age)],
    [say('fact.examiner'), result.examiner],
    [say('fact.given'), givenWords(result)],
    [
      say('fact.protocol'),
      say(`protocol.${protocol.from}`, { id: plain(protocol.id), version: protocol.version }),
    ],
    [say('fact.words'), words],
    [say('fact.first_hand'), first ? firstHandWords(first) : ''],
    [say('fact.clinic'), clinic],
    [say('fact.seal'), sealWords(seal)],
  ]
  return facts.filter(([, value]) => value !== '')
}
