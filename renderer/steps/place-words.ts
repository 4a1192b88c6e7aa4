import type { Pass, StepView } from '../../protocols/runner/view.ts'
import { say } from '../words/index.ts'
import { tellSide } from './tell.ts'

/** One loop around a step or a score, in words; null where there is only one pass and nothing to tell it by. */
export function tellPass(pass: Pass): string | null {
  if (pass.list === 'hands') return tellSide({ hand: pass.id ?? '' }) || null
  if (pass.list !== null) return pass.text ?? pass.id
  if (pass.of === 1) return null
  return pass.of === null
    ? say('steps.pass', { number: pass.number })
    : say('steps.pass_of', { number: pass.number, of: pass.of })
}

/** The hand is what must never be mistaken: it comes first, however the loops lie around each other. */
const handFirst = (passes: readonly Pass[]): readonly Pass[] =>
  [...passes].sort((one, other) => Number(other.list === 'hands') - Number(one.list === 'hands'))

/** Passes in words, the hand first, then outermost first: `Right hand · Trial 2 of 3`. */
export const tellPasses = (passes: readonly Pass[]): string =>
  handFirst(passes)
    .map(tellPass)
    .filter((words) => words !== null)
    .join(' · ')

/** Where we are: the passes, and whether it only is practice. */
export function placeWords(step: Pick<StepView, 'passes' | 'practice'>): readonly string[] {
  const words = handFirst(step.passes)
    .map(tellPass)
    .filter((each) => each !== null)
  return step.practice ? [...words, say('steps.practice')] : words
}
