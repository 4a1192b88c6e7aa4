import type { Step } from '../language/model.ts'
import { STEP_KINDS } from '../language/schema/kinds.ts'
import type { StepKind } from '../steps/kind.ts'
import type { Data } from './chart-parts.ts'
import type { Ground } from './due.ts'
import type { EventBody } from './events.ts'
import { samePlace } from './places.ts'
import type { Happened, State } from './state.ts'
import type { Change, Way } from './transitions.ts'
import type { Refusal } from './view.ts'
import { refuse } from './refuse.ts'

/** A step of the file as the parts of its chart know it. */
export interface StepGround extends Ground {
  readonly step: Step
  readonly kind: StepKind
  /** Id of its state in the chart: its name, where it is given in the test. */
  readonly id: string
  /** How it is left. */
  readonly ways: readonly Way[]
}

export function stepKind(step: Step): StepKind {
  const kind = STEP_KINDS.get(step.kind)
  if (kind === undefined) throw new Error(`There is no kind of step ${step.kind}.`)
  return kind
}

/** The data of a step's event without what every such event has. */
export function dataOf(body: EventBody): Data {
  const { kind: _kind, step: _step, place: _place, ...data } = body as Data
  return data
}

/** Why an event is not meant for the step and place at hand. */
export function misplaced(state: State, { body }: Happened): Refusal | null {
  const { visit } = state
  if (visit === null) return refuse('not_giving')
  if ('step' in body && body.step !== visit.step) {
    return refuse('wrong_step', { step: String(body.step), at: visit.step })
  }
  if ('place' in body && !samePlace(body.place as State['place'], visit.place)) {
    return refuse('wrong_place', { step: visit.step })
  }
  return null
}

/** The step is left behind. */
export const leaving: Change = (state) => ({ passed: state.passed + 1 })
