/**
 * The runner of one protocol: the only authority on what may happen next in an administration. Everything here
 * is pure; whoever has a disk appends the events.
 */
import type { Protocol } from '../language/model.ts'
import type { Standing } from '../scoring/scope.ts'
import type { Compared, RehearsedEvent, TellingOutcome } from '../steps/kind.ts'
import { attemptsAt, cellAt } from './cells.ts'
import { type Administration, begin, take } from './administration.ts'
import { type AtHand, atHand } from './at-hand.ts'
import { chartOf } from './chart.ts'
import type { Chance } from './chart-parts.ts'
import { type Ground, sectionChart } from './due.ts'
import type { EventBody, Place, Recorded } from './events.ts'
import { listOf } from './grown.ts'
import { judgingOf } from './judging.ts'
import { orderingMoment } from './ordering.ts'
import { atCell } from './playing.ts'
import { phaseOf } from './refusals.ts'
import { show } from './showing.ts'
import { sheetAt } from './showing-sheet.ts'
import { stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import { stepOf, treeOf } from './tree.ts'
import { openIn } from './unseen.ts'
import type { AdministrationView, Refusal } from './view.ts'

export type { Administration } from './administration.ts'

/** A cell of the page at hand. */
interface CellId {
  readonly step: string
  readonly place: Place
}

export interface Runner {
  /** An administration to which nothing has happened yet. */
  begin(): Administration
  /** What it becomes by an event, or why the event isn't taken; then nothing has changed. */
  take(administration: Administration, recorded: Recorded): Administration | Refusal
  /** The state as the replay of a log; events that aren't taken are named and change nothing. */
  replay(events: Iterable<Recorded>): {
    readonly administration: Administration
    readonly refused: readonly { readonly event: Recorded; readonly refusal: Refusal }[]
  }
  /** What the host has to append by itself now, such as the order of the hands; null when it waits for nobody but the examiner. */
  owed(administration: Administration, chance: Chance): EventBody | null
  /** What a screen may know. `id` is the administration's. */
  view(administration: Administration, id: string): AdministrationView
  /** What waits to be done now, without words. */
  atHand(administration: Administration): AtHand
  /** A made-up but plausible next event of the step at hand, or of a cell of the page; null where there is none. */
  rehearse(administration: Administration, random: () => number, cell?: CellId): RehearsedEvent | null
  /** The ways through the step at hand, or a cell of the page, that the file can tell apart; none where none waits. */
  telling(
    administration: Administration,
    compared: (step: string) => Compared,
    cell?: CellId,
  ): readonly TellingOutcome[]
  /** What scores rest on. */
  standing(administration: Administration): Standing
}

export function runnerFor(protocol: Protocol): Runner {
  const ground: Ground = { protocol, tree: treeOf(protocol), judging: judgingOf(protocol) }
  const chart = {
    machine: chartOf(ground),
    longestGapSeconds: protocol.about.longestGapMinutes * 60,
  }
  const runner: Runner = {
    begin: () => begin(chart),
    take: (administration, recorded) => take(chart, administration, recorded),
    replay: (events) => {
      let administration = begin(chart)
      const refused: { event: Recorded; refusal: Refusal }[] = []
      for (const event of events) {
        const next = runner.take(administration, event)
        if ('refused' in next) refused.push({ event, refusal: next })
        else administration = next
      }
      return { administration, refused }
    },
    owed: (administration, chance) => owedOrder(ground, administration, chance),
    rehearse: (administration, random, cell) => rehearsed(ground, administration, random, cell),
    telling: (administration, compared, cell) => telling(ground, administration, compared, cell),
    atHand: (administration) => atHand(ground, administration),
    view: (administration, id) => show(ground, administration, id),
    standing: ({ snapshot }) => ({
      ...ground.judging.standing(snapshot.context),
      trials: openIn(ground, listOf(snapshot.context.trials)),
      isWithdrawn: phaseOf(snapshot) === 'withdrawn',
    }),
  }
  return runner
}

function owedOrder(ground: Ground, { snapshot }: Administration, chance: Chance): EventBody | null {
  const moment = orderingMoment(ground, snapshot)
  const order = moment && sectionChart(moment.section).order(moment, chance)
  if (moment === null || order === null) return null
  const { section, around } = moment
  return { kind: 'ordered', section: section.name, place: around, items: [...order.items], rule: order.rule }
}

/** The step that something is made up for: the one at hand, or one on the page at hand as if it were. */
function madeUpFor(ground: Ground, { snapshot }: Administration, cell: CellId | undefined) {
  const state = snapshot.context
  if (phaseOf(snapshot) !== 'giving') return null
  if (cell !== undefined) {
    const sheet = sheetAt(ground, state)
    const found = sheet && cellAt(sheet, state, cell.step, cell.place)
    if (found === null || 'refused' in found) return null
    const { step, place } = found
    const here = atCell(state, found, attemptsAt(state, step, place))
    return { step, moment: stepMoment({ ...ground, step }, here, stepKind(step).chart.initial) }
  }
  const { at, visit } = state
  if (visit === null || at !== visit.step) return null
  const step = stepOf(ground.tree, visit.step)
  return { step, moment: stepMoment({ ...ground, step }, state, visit.state) }
}

function rehearsed(
  ground: Ground,
  administration: Administration,
  random: () => number,
  cell?: CellId,
): RehearsedEvent | null {
  const made = madeUpFor(ground, administration, cell)
  return made && stepKind(made.step).rehearse(made.moment, random)
}

function telling(
  ground: Ground,
  administration: Administration,
  compared: (step: string) => Compared,
  cell?: CellId,
): readonly TellingOutcome[] {
  const made = madeUpFor(ground, administration, cell)
  if (made === null) return []
  const outcomes = stepKind(made.step).outcomes(made.moment, compared(made.step.name))
  // On a page what gives a trial keeps it too.
  return cell === undefined
    ? outcomes
    : outcomes.map(({ label, events }) => ({ label, events: events.slice(0, 1) }))
}
