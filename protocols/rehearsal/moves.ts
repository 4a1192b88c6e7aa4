/** The ways on from where a walk stands: each outcome that the file can tell apart. */
import { CLOSINGS } from '../language/model.ts'
import type { AtHand, SheetAtHand, StepAtHand } from '../runner/at-hand.ts'
import type { EventBody, Place } from '../runner/events.ts'
import type { RehearsedEvent, TellingOutcome } from '../steps/kind.ts'
import { CLOCK } from './opening.ts'
import { act, reach, type Stand, type Taken, type Walk } from './walk.ts'

export interface Move {
  readonly taken: Taken
  /** Null where the chart refuses it. */
  make(stand: Stand): Stand | null
}

export function movesOf(walk: Walk, here: AtHand, stand: Stand): readonly Move[] {
  const { asking, choosing, sheet, step } = here
  if (asking !== null)
    return [true, false].map((apply) =>
      bodyMove(walk, asking.rule, asking.place, {
        outcome: apply ? 'applied' : 'not applied',
        usual: apply,
        body: { kind: 'ruled', rule: asking.rule, place: asking.place, apply },
      }),
    )
  if (choosing !== null)
    return choosing.items.map((_first, by) => {
      const items = [...choosing.items.slice(by), ...choosing.items.slice(0, by)]
      return bodyMove(walk, choosing.section, choosing.place, {
        outcome: items.join(', '),
        usual: by === 0,
        body: { kind: 'ordered', ...choosing, items, rule: 'chosen' },
      })
    })
  if (sheet !== null) return cellMoves(walk, sheet, stand)
  if (step === null) return [finishing(walk)]
  const told = walk.runner.telling(stand.administration, walk.relevance.comparedOf)
  return trialMoves(walk, step, { told, closes: 'trial' })
}

/** The outcomes of the first open cell: what a page is filled with in another order stands the same. */
function cellMoves(walk: Walk, { section, place, open }: SheetAtHand, stand: Stand): readonly Move[] {
  const [cell] = open
  if (cell === undefined) {
    const body: EventBody = { kind: 'sheet_left', section, place }
    return [bodyMove(walk, section, place, { outcome: 'left', usual: true, body })]
  }
  reach(walk, cell.step, stand)
  const told = walk.runner.telling(stand.administration, walk.relevance.comparedOf, cell)
  return trialMoves(walk, { ...cell, name: cell.step, practice: false }, { told, closes: cell.step })
}

const finishing = (walk: Walk): Move =>
  bodyMove(walk, ':end', {}, { outcome: 'finished', usual: true, body: { kind: 'finished' } })

/** Ends the test where it stands: what is left is not given. */
export function endedHere(walk: Walk, stand: Stand): Stand | null {
  const closing = bodyMove(
    walk,
    'test',
    {},
    {
      outcome: 'not_given',
      usual: false,
      body: { kind: 'closed', what: 'test', place: {}, outcome: 'not_given', reason: '' },
    },
  )
  const closed = closing.make(stand)
  return closed && finishing(walk).make(closed)
}

type Trial = Pick<StepAtHand, 'name' | 'kind' | 'place' | 'practice'>

/** `closes`: what an event names that closes the trial without a result. */
function trialMoves(
  walk: Walk,
  trial: Trial,
  { told, closes }: { readonly told: readonly TellingOutcome[]; readonly closes: string },
): readonly Move[] {
  const { name, kind, place, practice } = trial
  metAt(
    walk,
    trial,
    told.map(({ label }) => label),
  )
  const outcomes = told.map(({ label, events }, index): Move => {
    const taken = { at: name, place, outcome: label, usual: index === 0 }
    return { taken, make: (stand) => afterEvents(walk, { stand, taken, kind, events }) }
  })
  const closings = practice ? [] : CLOSINGS
  return [
    ...outcomes,
    ...closings.map((outcome) =>
      bodyMove(walk, name, place, {
        outcome,
        usual: false,
        body: { kind: 'closed', what: closes, place, outcome, reason: '' },
      }),
    ),
  ]
}

function metAt({ met }: Walk, { name, place }: Trial, labels: readonly string[]): void {
  const { outcomes, passes } = met.get(name) ?? { outcomes: new Set(), passes: new Set() }
  for (const label of labels) outcomes.add(label)
  const pass = innermostPass(place)
  if (pass !== null) passes.add(pass)
  met.set(name, { outcomes, passes })
}

/** The item that the innermost loop over a list is at. */
export const innermostPass = (place: Place): string | null =>
  Object.values(place).findLast((pass) => typeof pass === 'string') ?? null

function bodyMove(
  walk: Walk,
  at: string,
  place: Place,
  { outcome, usual, body }: { readonly outcome: string; readonly usual: boolean; readonly body: EventBody },
): Move {
  const taken = { at, place, outcome, usual }
  const make = (stand: Stand) => {
    const next = act(walk, { ...stand, now: stand.now + 2000 }, body)
    return next && { ...next, depth: stand.depth + 1, from: stand, taken }
  }
  return { taken, make }
}

interface Making {
  readonly stand: Stand
  readonly taken: Taken
  readonly kind: string
  readonly events: readonly RehearsedEvent[]
}

/** Null where the chart refuses one of the events: this outcome can't be had here. */
function afterEvents(walk: Walk, { stand, taken, kind, events }: Making): Stand | null {
  let next: Stand | null = stand
  for (const { event, after, data } of events) {
    if (next === null) return null
    const now: number = next.now + after
    const stamp = { at: now, clock: CLOCK, input: 'key', late: 0 } as const
    const body = { ...data(stamp), kind: `${kind}.${event}`, step: taken.at, place: taken.place }
    next = act(walk, { ...next, now }, body)
  }
  return next && { ...next, depth: stand.depth + 1, from: stand, taken }
}
