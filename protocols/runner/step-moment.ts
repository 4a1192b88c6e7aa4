import { textOf, wordingFor } from '../language/words.ts'
import { scopeAt } from '../scoring/scope.ts'
import type { StepMoment } from './moment.ts'
import type { State } from './state.ts'
import type { StepGround } from './step-ground.ts'
import { addedTo, lastEnd } from './trials.ts'

/** The step at hand as its kind sees it in one of the states of its chart. */
export function stepMoment(
  at: Omit<StepGround, 'kind' | 'id' | 'ways'>,
  state: State,
  name: string,
): StepMoment {
  const { step, judging, protocol } = at
  const { visit, flight } = state
  const place = visit?.place ?? state.place
  return {
    step,
    place,
    state: name,
    local: visit?.local ?? {},
    trial: flight,
    attempt: flight?.attempt ?? (visit?.attempts ?? 0) + 1,
    voidsLeft: step.voids === null ? null : Math.max(0, step.voids - (visit?.voids ?? 0)),
    dead: state.dead,
    kit: protocol.kit,
    added: flight === null ? null : (addedTo(at, flight)?.value ?? null),
    lastEnd: (of) => lastEnd(state, of, place),
    say: (text) =>
      textOf(
        protocol,
        wordingFor(protocol, state.opened?.protocol.wording ?? null),
        text,
        scopeAt(judging.standing(state), place),
      ),
    quantity: (from, unit) => judging.quantity(state, from, unit, place)?.value ?? null,
    value: (expression) => judging.value(state, expression, place).value,
  }
}
