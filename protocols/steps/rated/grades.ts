/** Which grades may be given where a rating stands. */
import type { Value } from '../../language/expressions/types.ts'
import type { StepMoment } from '../../runner/moment.ts'
import type { RatedFields } from './keys.ts'

const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as RatedFields

const numberIn = (value: Value): number | null =>
  typeof value === 'object' && value !== null && 'n' in value ? value.n : null

/** The scale's grades with their words, lowest first. */
export function scaleOf(moment: StepMoment): readonly { readonly grade: number; readonly text: string }[] {
  return Object.entries(fieldsOf(moment).scale)
    .map(([grade, text]) => ({ grade: Number(grade), text: moment.say(text) }))
    .sort((one, other) => one.grade - other.grade)
}

/** The grades that may be given here; null where the file's expression for them has no value. */
export function allowedOf(moment: StepMoment): readonly number[] | null {
  const { allow, scale } = fieldsOf(moment)
  const all = Object.keys(scale).map(Number)
  if (allow === undefined) return all
  if (!('from' in allow)) return allow
  const value = moment.value(allow.from)
  if (!Array.isArray(value)) return null
  const grades = value.map(numberIn)
  return all.filter((grade) => grades.includes(grade))
}

/** The highest grade that what was measured allows; `unknown` where it has no value here, null where there is none. */
export function highestOf(moment: StepMoment): number | 'unknown' | null {
  const { highest } = fieldsOf(moment)
  return highest === undefined ? null : (numberIn(moment.value(highest)) ?? 'unknown')
}
