/** In which order a section's passes come, and the rule that decided it. */
import { type ClientFacts, otherSide, SIDES, type Side } from '../../client.ts'
import type { Chance, SectionMoment } from '../../runner/chart-parts.ts'
import type { ForEachFields, Order } from './keys.ts'

/**
 * Rules that may be recorded beside the ones a file can name: the hand used now first, and the case where
 * there is but one hand to give.
 */
type OrderRule = Order | 'used-now-first' | 'only-hand' | 'none'

export interface Decided {
  readonly items: string[]
  readonly rule: OrderRule
}

/** What is tried after the orders that the file names: less affected first, then the hand used now, then right. */
const FALLBACK = ['less-affected-first', 'used-now-first', 'right-first'] as const

const AFFECTION = { unaffected: 0, less_affected: 1, affected: 2 } as const

/** How much an arm is affected, as far as it can be compared; null where it can't. */
function affection(facts: ClientFacts, side: Side): number | null {
  const { status } = facts.arms[side]
  return status === 'absent' || status === 'unknown' ? null : AFFECTION[status]
}

const sideOf = (handedness: ClientFacts['usedNow']): Side | null =>
  handedness === 'right' || handedness === 'left' ? handedness : null

/** The hand that is the less affected one of two that differ. */
function lessAffected(facts: ClientFacts): Side | null {
  const [right, left] = [affection(facts, 'right'), affection(facts, 'left')]
  if (right === null || left === null || right === left) return null
  return right < left ? 'right' : 'left'
}

function unaffected(facts: ClientFacts): Side | null {
  const side = lessAffected(facts)
  return side !== null && affection(facts, side) === 0 ? side : null
}

const other = (side: Side | null): Side | null => side && otherSide(side)

const FIRST: Readonly<Record<string, (facts: ClientFacts) => Side | null>> = {
  'dominant-first': (facts) => sideOf(facts.dominantBefore),
  'nondominant-first': (facts) => other(sideOf(facts.dominantBefore)),
  'affected-first': (facts) => other(lessAffected(facts)),
  'unaffected-first': unaffected,
  'less-affected-first': lessAffected,
  'used-now-first': (facts) => sideOf(facts.usedNow),
  'right-first': () => 'right',
  'left-first': () => 'left',
}

function shuffled(items: readonly string[], random: () => number): string[] {
  const left = [...items]
  const drawn: string[] = []
  while (left.length > 0) drawn.push(...left.splice(Math.floor(random() * left.length), 1))
  return drawn
}

const key = (items: readonly string[]): string => JSON.stringify(items)

/**
 * The rotation of the list that was used least before, by lot between several: over the clients every item comes
 * first as often. Earlier orders of other items, such as of a client who has but one hand, count for none.
 */
export function balanced(
  items: readonly string[],
  earlier: readonly (readonly string[])[],
  random: () => number,
): string[] {
  const rotations = items.map((_item, by) => [...items.slice(by), ...items.slice(0, by)])
  const used = (rotation: readonly string[]) => earlier.filter((order) => key(order) === key(rotation)).length
  const least = Math.min(...rotations.map(used))
  const candidates = rotations.filter((rotation) => used(rotation) === least)
  return candidates[Math.floor(random() * candidates.length)] ?? []
}

/** The orders that the section names, in the order they are tried. */
export function namedOrders(fields: ForEachFields): readonly Order[] {
  if (fields.order === undefined) return []
  return typeof fields.order === 'string' ? [fields.order] : fields.order
}

/** Sides of a client that can't be given anything, since there is no hand. */
export const absentHands = (facts: ClientFacts): readonly Side[] =>
  SIDES.filter((side) => facts.arms[side].status === 'absent')

/** Decides by facts, by what came before and by chance; null where the file leaves the choice to the examiner. */
export function decide(
  fields: ForEachFields,
  { section, facts, items }: Pick<SectionMoment, 'section' | 'facts' | 'items'>,
  chance: Chance,
): Decided | null {
  const hands = fields.in === 'hands'
  const present = hands ? items.filter((side) => !absentHands(facts).includes(side as Side)) : items
  if (hands && present.length < 2)
    return { items: [...present], rule: present.length === 1 ? 'only-hand' : 'none' }
  for (const rule of [...namedOrders(fields), ...FALLBACK]) {
    if (rule === 'chosen') return null
    if (rule === 'shuffled') return { items: shuffled(present, chance.random), rule }
    if (rule === 'balanced')
      return { items: balanced(present, chance.earlier(section.name), chance.random), rule }
    const first = FIRST[rule]?.(facts)
    if (first) return { items: [first, otherSide(first)], rule }
  }
  return null
}
