/** This hand against the other: only where the other can serve as a measure, else the reason. */
import { type ClientFacts, otherSide, type Side, SIDES } from '../client.ts'
import { difference } from '../language/expressions/exact.ts'
import type { Trial } from '../runner/view.ts'
import type { ScoreValue } from './result.ts'
import type { Scored } from './scores.ts'

type OtherHand = NonNullable<ScoreValue['otherHand']>

export interface BothHands {
  readonly scored: Scored
  /** The loop whose passes are hands. */
  readonly loop: string
  readonly all: readonly Scored[]
  readonly trials: readonly Trial[]
  readonly facts: ClientFacts
  /** Day of the administration: restrictions that ended before it don't count. */
  readonly on: string
  /** Whether something was done that touches what is measured; it may have touched one hand only. */
  readonly isModified: boolean
  /** The error of difference and ratio for taking times by hand. */
  uncertaintyBeside(other: Scored): OtherHand['uncertainty']
}

const withheld = (code: string, detail: Record<string, string> = {}): OtherHand => ({
  value: null,
  difference: null,
  ratio: null,
  uncertainty: null,
  withheld: { code, detail },
})

/** Null where the score isn't of one hand. */
export function otherHandOf(both: BothHands): OtherHand | null {
  const side = SIDES.find((one) => one === both.scored.place[both.loop])
  if (side === undefined) return null
  const other = otherSide(side)
  const barred = barredBy(other, both)
  if (barred !== null) return withheld(barred)
  const counterpart = counterpartOf(both, other)
  if (counterpart === undefined || counterpart.value === null)
    return withheld('other_no_value', { reason: counterpart?.missing?.code ?? 'no_rows' })
  if (both.scored.over || counterpart.over) return withheld('bound')
  if (both.isModified || waysOf(both, both.scored) !== waysOf(both, counterpart))
    return withheld('other_given_differently')
  const { value } = both.scored
  if (value === null) return withheld('no_value')
  return {
    value: counterpart.value,
    difference: difference(value, counterpart.value),
    ratio: counterpart.value === 0 ? null : value / counterpart.value,
    uncertainty: both.uncertaintyBeside(counterpart),
    withheld: null,
  }
}

function barredBy(other: Side, { scored, facts, on }: BothHands): string | null {
  const { status, restrictions } = facts.arms[other]
  if (status === 'absent') return 'other_absent'
  if (status === 'affected' || status === 'less_affected') return 'other_affected'
  if (status === 'unknown') return 'other_unknown'
  if (restrictions.some(({ until }) => until === null || until >= on)) return 'other_restricted'
  return scored.value === null ? 'no_value' : null
}

const counterpartOf = ({ scored, loop, all }: BothHands, other: Side): Scored | undefined =>
  all.find(
    (one) =>
      one.score === scored.score &&
      scored.score.each.every((name) => one.place[name] === (name === loop ? other : scored.place[name])),
  )

/** How a score's trials were given, the hand left out: the same text for two hands given the same way. */
function waysOf({ loop, trials }: BothHands, { trials: ids }: Scored): string {
  const ways = trials
    .filter(({ id }) => ids.includes(id))
    .map(({ step, place, outcome }) => {
      const inner = Object.entries(place).filter(([name]) => name !== loop)
      return JSON.stringify([step, inner.sort(([a], [b]) => (a < b ? -1 : 1)), outcome])
    })
  return ways.sort().join()
}
