/**
 * The runner of one protocol: the only authority on what may happen next in an administration. Everything here
 * is pure; whoever has a disk appends the events.
 */
import type { Protocol } from '../language/model.ts'
import type { Standing } from '../scoring/scope.ts'
import type { Compared, RehearsedEvent, TellingOutcome } from '../steps/kind.ts'
import { type Administration, begin, take } from './administration.ts'
import { chartOf } from './chart.ts'
import type { Chance } from './chart-parts.ts'
import { type Ground, sectionChart } from './due.ts'
import type { EventBody, Recorded } from './events.ts'
import { listOf } from './grown.ts'
import { judgingOf } from './judging.ts'
import { orderingMoment } from './ordering.ts'
import { phaseOf } from './refusals.ts'
import { show } from './showing.ts'
import { stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import { stepOf, treeOf } from './tree.ts'
import { openIn } from './unseen.ts'
import type { AdministrationView, Refusal } from './view.ts'

export type { Administration } from './administration.ts'

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
  /** A made-up but plausible next event of the step at hand; null where there is none. */
  rehearse(administration: Administration, random: () => number): RehearsedEvent | null
  /** The ways through the step at hand that the file can tell apart; none where no step waits to begin. */
  telling(administration: Administration, compared: (step: string) => Compared): readonly TellingOutcome[]
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
    rehearse: (administration, random) => rehearsed(ground, administration, random),
    telling: (administration, compared) => telling(ground, administration, compared),
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

function rehearsed(
  ground: Ground,
  { snapshot }: Administration,
  random: () => number,
): RehearsedEvent | null {
  const { at, visit } = snapshot.context
  if (visit === null || at !== visit.step || phaseOf(snapshot) !== 'giving') return null
  const step = stepOf(ground.tree, visit.step)
  return stepKind(step).rehearse(stepMoment({ ...ground, step }, snapshot.context, visit.state), random)
}

function telling(
  ground: Ground,
  { snapshot }: Administration,
  compared: (step: string) => Compared,
): readonly TellingOutcome[] {
  const { at, visit } = snapshot.context
  if (visit === null || at !== visit.step || phaseOf(snapshot) !== 'giving') return []
  const step = stepOf(ground.tree, visit.step)
  return stepKind(step).outcomes(
    stepMoment({ ...ground, step }, snapshot.context, visit.state),
    compared(step.name),
  )
}
