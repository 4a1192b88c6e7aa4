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

/** The time, and the moments on the way, which are seen. What happenings add is counted, not timed. */
export function ends(step: Step) {
  const { start, stop, splits } = step.fields as unknown as TimedFields
  const onTheWay = Object.keys(splits ?? {}).map(
    (name) => [name, { start: start.by, stop: 'seen' as const }] as const,
  )
  return { time: { start: start.by, stop: stop.by }, ...Object.fromEntries(onTheWay) }
}
