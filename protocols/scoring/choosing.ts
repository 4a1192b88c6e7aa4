/** What the columns of a norm table that choose a row are, of this client in this place. */
import { type ClientFacts, type Side, SIDES } from '../client.ts'
import type { NormCell, NormColumn, Protocol } from '../language/model.ts'
import type { Place } from '../runner/events.ts'
import type { Trial } from '../runner/view.ts'
import { conditionHere } from './gathered.ts'
import { belongs, isRow } from './rows.ts'

/** What a column holds here: a word or a number; null: not known, which rules no row out. */
export type Chosen = string | number | null

interface Choosing {
  readonly facts: ClientFacts
  readonly trials: readonly Trial[]
  readonly place: Place
}

interface Here extends Choosing {
  readonly protocol: Protocol
  /** Condition name to what was recorded. */
  readonly conditions: Readonly<Record<string, string>>
  /** The hand that the score is of; null: of no single hand. */
  readonly hand: Side | null
}

export function chosenHere({ column, by }: NormColumn, here: Here): Chosen {
  const { protocol, facts, trials, conditions, place, hand } = here
  switch (by) {
    case 'loop':
      return (Object.hasOwn(place, column) ? place[column] : undefined) ?? null
    case 'condition': {
      const condition = protocol.conditions.find(({ name }) => name === column)
      return condition === undefined ? null : conditionHere(condition, conditions)
    }
    case 'step':
      return readingOf(trials, column, place)
    case 'client':
      return ofClient(column, facts, hand)
  }
}

/** The first reading of the last row of a step, such as the answer to what was asked. */
function readingOf(trials: readonly Trial[], step: string, place: Place): Chosen {
  const last = trials.findLast(
    (trial) => trial.step === step && isRow(trial) && trial.outcome === 'done' && belongs(trial.place, place),
  )
  return Object.values(last?.readings ?? {})[0]?.value ?? null
}

function ofClient(column: string, facts: ClientFacts, hand: Side | null): Chosen {
  if (column === 'schooling') return facts.schoolingYears
  if (column === 'arm') return hand === null ? null : armOf(facts, hand)
  return affectedSide(facts)
}

function armOf({ arms }: ClientFacts, hand: Side): Chosen {
  const { status } = arms[hand]
  return status === 'unknown' || status === 'absent' ? null : status
}

function affectedSide({ arms }: ClientFacts): Chosen {
  if (SIDES.some((side) => arms[side].status === 'unknown')) return null
  const affected = SIDES.filter((side) => arms[side].status !== 'unaffected')
  return affected.length > 1 ? 'both' : (affected[0] ?? 'neither')
}

/** Whether a cell holds what is known; what isn't known may be anything. */
export function fitsCell(cell: NormCell, chosen: Chosen): boolean {
  if (chosen === null) return true
  if (cell.is === 'word') return cell.word === String(chosen)
  const number = Number(chosen)
  return (
    Number.isFinite(number) &&
    (cell.from === null || number >= cell.from) &&
    (cell.to === null || number <= cell.to)
  )
}

/** A cell as a result shows it. */
export function cellText(cell: NormCell): string {
  if (cell.is === 'word') return cell.word
  return cell.from === cell.to ? String(cell.from) : `${cell.from ?? ''}..${cell.to ?? ''}`
}
