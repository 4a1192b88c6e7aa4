import type { ValueType } from '../../language/expressions/types.ts'
import type { Step } from '../../language/model.ts'

/** What the step counts, as a UCUM annotation: `{count}` unless the file says otherwise. */
export function countUnit(step: Step): string {
  return typeof step.fields.unit === 'string' ? step.fields.unit : '{count}'
}

/** `count` is what was counted at the end, `tapped` what was tapped along: both are kept and compared. */
export function columns(step: Step): Readonly<Record<string, ValueType>> {
  const unit = countUnit(step)
  return { count: { is: 'number', unit }, tapped: { is: 'number', unit } }
}
