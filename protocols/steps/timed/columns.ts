import type { ValueType } from '../../language/expressions/types.ts'
import type { Step } from '../../language/model.ts'
import type { TimedFields } from './keys.ts'

const of = (names: object | undefined, unit: string): Readonly<Record<string, ValueType>> =>
  Object.fromEntries(Object.keys(names ?? {}).map((name) => [name, { is: 'number', unit }]))

/** The time, what happenings add to it, the moments on the way, and how far it went at the limit. */
export function columns(step: Step): Readonly<Record<string, ValueType>> {
  const { reached, splits } = step.fields as unknown as TimedFields
  return {
    time: { is: 'number', unit: 's' },
    added: { is: 'number', unit: 's' },
    ...of(splits, 's'),
    ...of(reached, '{count}'),
  }
}
