import type { ValueType } from '../../language/expressions/types.ts'
import type { Step } from '../../language/model.ts'

export function columns(step: Step): Readonly<Record<string, ValueType>> {
  return { value: { is: 'number', unit: String(step.fields.unit) } }
}
