/** What a profile can't say, whatever its shape allows: found when it is written, so that no result rests on it. */
import type { Birth, Profile } from '../../protocols/client.ts'
import { Refused } from '../contract/procedure.ts'

/** The oldest anybody can be; the contract's shape takes years from here as well. */
const FIRST_YEAR = 1850

/** A calendar date as ISO 8601 writes it; a shape alone would let the 30th of February through. */
export function isCalendarDate(text: string): boolean {
  const at = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text)
}

/**
 * @param today civil date
 * @throws Refused `profile_empty`, `birth_in_future`, `birth_too_early`, `date_impossible`, `date_in_future`
 */
export function checkProfile(profile: Profile, today: string): void {
  if (!profile.name.trim() && !profile.number.trim()) throw new Refused('profile_empty')
  checkBirth(profile.facts.birth, today)
  if (profile.agreement.on) checkPast('agreement', profile.agreement.on, today)
  for (const hand of ['right', 'left'] as const)
    for (const { until } of profile.facts.arms[hand].restrictions)
      if (until && !isCalendarDate(until))
        throw new Refused('date_impossible', { field: 'until', given: until })
}

function checkBirth(birth: Birth, today: string): void {
  if (birth.known === 'no') return
  if (birth.known === 'told') {
    checkPast('told', birth.on, today)
    return
  }
  const given =
    birth.known === 'date'
      ? birth.date
      : birth.known === 'month'
        ? `${birth.year}-${String(birth.month).padStart(2, '0')}`
        : String(birth.year)
  if (birth.known === 'date' && !isCalendarDate(given))
    throw new Refused('date_impossible', { field: 'birth', given })
  // Compared as far as it is known: someone born this year, or this month, may be here.
  if (given > today.slice(0, given.length)) throw new Refused('birth_in_future', { given })
  if (Number(given.slice(0, 4)) < FIRST_YEAR) throw new Refused('birth_too_early', { given })
}

/** @throws Refused `date_impossible`, `date_in_future` */
export function checkPast(field: string, given: string, today: string): void {
  if (!isCalendarDate(given)) throw new Refused('date_impossible', { field, given })
  if (given > today) throw new Refused('date_in_future', { field, given })
}
