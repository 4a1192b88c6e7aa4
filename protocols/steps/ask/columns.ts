import type { ValueType } from '../../language/expressions/types.ts'
import type { Step } from '../../language/model.ts'
import type { AskFields } from './keys.ts'

/** What a number that is answered measures: `1` unless the file says otherwise. */
export const unitOf = ({ unit }: AskFields): string => unit ?? '1'

/** `answer` is the id of an option, a number, or the words that were typed. */
export function columns(step: Step): Readonly<Record<string, ValueType>> {
  const fields = step.fields as unknown as AskFields
  if (fields.options !== undefined) return { answer: { is: 'text', oneOf: Object.keys(fields.options) } }
  if (fields.range !== undefined) return { answer: { is: 'number', unit: unitOf(fields) } }
  return { answer: { is: 'text' } }
}
