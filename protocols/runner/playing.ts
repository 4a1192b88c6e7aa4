/** A trial given in one act: the chart of its kind is gone through at once, as the kind says for a sheet. */
import type { Data, StepMove } from './chart-parts.ts'
import type { Cell } from './cells.ts'
import type { Ground } from './due.ts'
import type { Happened, State } from './state.ts'
import { dataOf, stepKind } from './step-ground.ts'
import { stepMoment } from './step-moment.ts'
import { applyEffect, stood } from './trials.ts'
import type { Refusal, Trial } from './view.ts'

interface Giving {
  readonly cell: Cell
  readonly event: Happened
  /** Trials that were given in the cell before and are void. */
  readonly attempts: number
}

/** As if the step of the cell were at hand by itself. */
export function atCell(state: State, { step, place }: Cell, attempts: number): State {
  const visit = {
    step: step.name,
    place,
    attempts,
    voids: 0,
    state: stepKind(step).chart.initial,
    local: {},
  }
  return { ...state, place, visit, flight: null, running: false }
}

/** The move that an event makes in the state that the kind's chart is in. */
function moveOf(ground: Ground, state: State, cell: Cell, named: string, data: Data): StepMove | null {
  const { chart } = stepKind(cell.step)
  const name = state.visit?.state ?? chart.initial
  const moment = stepMoment({ ...ground, step: cell.step }, state, name)
  return chart.states[name]?.on[named]?.find((move) => move.when?.(moment, data) !== false) ?? null
}

const givesOf = ({ step }: Cell): string => stepKind(step).onSheet?.(step)?.gives ?? ''

/** Why the kind doesn't take what is given; null where it does. */
export function refusedIn(ground: Ground, state: State, { cell, event, attempts }: Giving): Refusal | null {
  const here = atCell(state, cell, attempts)
  const data = dataOf(event.body)
  const move = moveOf(ground, here, cell, givesOf(cell), data)
  const moment = stepMoment({ ...ground, step: cell.step }, here, here.visit?.state ?? '')
  return move?.refuses?.(moment, data) ?? null
}

/** The trial that is given and kept, and what else it brings about. */
export function givenIn(
  ground: Ground,
  state: State,
  { cell, event, attempts }: Giving,
): Pick<State, 'deviations' | 'ends' | 'made'> & { readonly trial: Trial } {
  const { step } = cell
  const keeps = stepKind(step).onSheet?.(step)?.keeps ?? ''
  let now = atCell(state, cell, attempts)
  for (const [named, data] of [
    [givesOf(cell), dataOf(event.body)],
    [keeps, { stamp: null }],
  ] as const) {
    const move = moveOf(ground, now, cell, named, data)
    const moment = stepMoment({ ...ground, step }, now, now.visit?.state ?? '')
    const done = { ...now, ...applyEffect(now, event, step, move?.does?.(moment, data) ?? {}) }
    now = { ...done, visit: done.visit && { ...done.visit, state: move?.to ?? '' } }
  }
  const { deviations, ends, made, flight } = now
  if (flight === null) throw new Error(`${step.name} gives no trial in one act.`)
  return { deviations, ends, made, trial: stood(ground, now, flight, { outcome: null, remark: '' }) }
}
