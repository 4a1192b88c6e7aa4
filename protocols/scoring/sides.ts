/** Which hand is dominant and which is affected, from the client's facts; none is guessed. */
import { type ClientFacts, otherSide, type Side } from '../client.ts'
import { bool, none, text } from '../language/expressions/datum.ts'
import type { Datum } from '../language/expressions/types.ts'

export const SIDE_NAMES = ['dominant', 'nondominant', 'affected', 'unaffected'] as const
export type SideName = (typeof SIDE_NAMES)[number]

/** The side that a name stands for, or why it stands for none. */
export function sideNamed(name: SideName, facts: ClientFacts): Datum {
  switch (name) {
    case 'dominant':
      return dominant(facts, (side) => side)
    case 'nondominant':
      return dominant(facts, otherSide)
    case 'affected':
      return affected(facts)
    case 'unaffected':
      return unaffected(facts)
  }
}

/** The hand that was dominant before the illness, where it was one of the two. */
export function dominantSide(facts: ClientFacts): Side | null {
  const { dominantBefore } = facts
  return dominantBefore === 'right' || dominantBefore === 'left' ? dominantBefore : null
}

const dominant = (facts: ClientFacts, pick: (side: Side) => Side): Datum => {
  const side = dominantSide(facts)
  return side === null ? none('dominance_unknown') : text(pick(side))
}

/** The affected side: the more affected one where both are and they were told apart. */
function affected({ arms }: ClientFacts): Datum {
  const { right, left } = arms
  if (right.status === 'unknown' || left.status === 'unknown') return none('affected_unknown')
  if (right.status === 'affected') return left.status === 'affected' ? none('both_affected') : text('right')
  if (left.status === 'affected') return text('left')
  if (right.status === 'less_affected')
    return left.status === 'less_affected' ? none('both_affected') : text('right')
  return left.status === 'less_affected' ? text('left') : none('none_affected')
}

function unaffected({ arms }: ClientFacts): Datum {
  const { right, left } = arms
  if (right.status === 'unknown' || left.status === 'unknown') return none('affected_unknown')
  if (right.status === 'unaffected')
    return left.status === 'unaffected' ? none('none_affected') : text('right')
  return left.status === 'unaffected' ? text('left') : none('both_affected')
}

/** Whether this hand is affected, however little. */
export function isAffected(side: Side, facts: ClientFacts): Datum {
  const { status } = facts.arms[side]
  if (status === 'unknown') return none('affected_unknown')
  if (status === 'absent') return none('absent')
  return bool(status !== 'unaffected')
}

export function isDominant(side: Side, facts: ClientFacts): Datum {
  const known = dominantSide(facts)
  return known === null ? none('dominance_unknown') : bool(known === side)
}
