/** What is known of a person, in words: nothing unknown is left out or made up. */
import type { Output } from '../../main/contract/procedures.ts'
import { type Birth, type ClientFacts, SIDES } from '../../protocols/client.ts'
import { say } from '../words/index.ts'
import { showDate } from './dates.ts'

export type Person = Output<'clients.read'>['client']

const MONTH = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' })

export function nameOf({ profile }: Person): string {
  return profile.name || say('person.number', { number: profile.number })
}

export function bornWords(birth: Birth): string {
  if (birth.known === 'date') return say('person.born.date', { date: showDate(birth.date) })
  if (birth.known === 'month')
    return say('person.born.month', {
      month: MONTH.format(new Date(Date.UTC(birth.year, birth.month - 1, 1))),
    })
  if (birth.known === 'year') return say('person.born.year', { year: String(birth.year) })
  if (birth.known === 'told') return say('person.born.told', { years: birth.years, on: showDate(birth.on) })
  return say('person.born.no')
}

/** A birth as lists give it (`1951-03-09`, `1951-03`, `1951`, `72 (2026-03-01)`), in words. */
export function bornLine(born: string): string {
  const told = /^(\d+) \((\d{4}-\d{2}-\d{2})\)$/.exec(born)
  if (told) return bornWords({ known: 'told', years: Number(told[1]), on: told[2] ?? '' })
  const [year, month, day] = born.split('-')
  if (!year) return bornWords({ known: 'no' })
  if (day) return bornWords({ known: 'date', date: born })
  return bornWords(
    month
      ? { known: 'month', year: Number(year), month: Number(month) }
      : { known: 'year', year: Number(year) },
  )
}

export function ageWords(age: Person['age']): string {
  if (!age) return say('person.age.unknown')
  return age.from === age.to
    ? say('person.age.years', { years: age.from })
    : say('person.age.range', { from: age.from, to: age.to })
}

type Status = ClientFacts['arms']['right']['status']

function sidesWith(facts: ClientFacts, statuses: readonly Status[]): string | null {
  const sides = SIDES.filter((side) => statuses.includes(facts.arms[side].status))
  if (sides.length === 2) return say('person.side.both')
  return sides[0] ? say(`person.side.${sides[0]}`) : null
}

/** The affected side or sides; told apart: none is affected, and it isn't known. */
export function affectedWords(facts: ClientFacts): string {
  const affected = sidesWith(facts, ['affected', 'less_affected'])
  if (affected) {
    const less = sidesWith(facts, ['less_affected'])
    return less ? say('person.affected.less', { affected, less }) : affected
  }
  return sidesWith(facts, ['unknown']) ? say('person.unknown') : say('person.side.none')
}

export function absentWords(facts: ClientFacts): string {
  const parts = SIDES.filter((side) => facts.arms[side].absentPart || facts.arms[side].status === 'absent')
  if (parts.length === 0)
    return sidesWith(facts, ['unknown']) ? say('person.unknown') : say('person.side.none')
  return parts
    .map((side) =>
      facts.arms[side].absentPart
        ? say(`person.absent.${side}`, { part: facts.arms[side].absentPart })
        : say(`person.side.${side}`),
    )
    .join('; ')
}

export interface SidedRestriction {
  readonly side: (typeof SIDES)[number]
  /** As it stands in the record: what an answer about it names. */
  readonly what: string
  readonly words: string
  readonly detail: string
}

/** The restrictions of both arms, each to be answered before a test. */
export function restrictionsOf(facts: ClientFacts): SidedRestriction[] {
  return SIDES.flatMap((side) =>
    facts.arms[side].restrictions.map(({ what, setBy, until }) => ({
      side,
      what,
      words: say(`person.restriction.${side}`, { what }),
      detail: [
        setBy ? say('person.restriction.by', { who: setBy }) : '',
        until ? say('person.restriction.until', { date: showDate(until) }) : say('person.restriction.open'),
      ]
        .filter(Boolean)
        .join(' '),
    })),
  )
}
