/** What has to be answered before the first step, and what then stands in its way. */
import type { Protocol } from '../language/model.ts'
import type { RunnerEvent } from './events.ts'
import type { State } from './state.ts'
import { refuse } from './refuse.ts'
import type { Refusal } from './view.ts'

type Prepared = Extract<RunnerEvent, { readonly kind: 'prepared' }>

/** Why the answers are not complete: every precaution is answered, every condition that is told is one of the file's. */
export function notPrepared({ precautions, conditions }: Protocol, answers: Prepared): Refusal | null {
  const open = precautions.find(({ id }) => !Object.hasOwn(answers.precautions, id))
  if (open !== undefined) return refuse('precaution_unanswered', { precaution: open.id })
  for (const [name, told] of Object.entries(answers.conditions)) {
    const condition = conditions.find((each) => each.name === name)
    if (condition === undefined) return refuse('no_such_condition', { condition: name })
    if (!condition.options.some(({ id }) => id === told)) {
      return refuse('no_such_option', { condition: name, option: told })
    }
  }
  const missing = conditions.find(
    ({ name, setBy, usual }) =>
      (setBy === 'clinic' || setBy === 'examiner') &&
      usual === null &&
      !Object.hasOwn(answers.conditions, name),
  )
  return missing === undefined ? null : refuse('condition_missing', { condition: missing.name })
}

/** A precaution that was answered with "present, not given": then the test isn't. */
export function notToBeGiven({ prepared }: State): Refusal | null {
  const found = Object.entries(prepared?.precautions ?? {}).find(([, { answer }]) => answer === 'not_given')
  return found === undefined ? null : refuse('not_to_be_given', { precaution: found[0] })
}
