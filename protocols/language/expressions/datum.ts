/** Making and reading the values inside an evaluation. */
import type { Datum, Missing, Trials, Value } from './types.ts'

const NONE: Trials = []

/** A number, or the reason `not_a_number` where arithmetic left the numbers there are. */
export const number = (n: number, over = false, trials: Trials = NONE): Datum =>
  Number.isFinite(n) ? { is: 'number', n, over, trials } : none('not_a_number', {}, trials)
export const text = (value: string, trials: Trials = NONE): Datum => ({ is: 'text', text: value, trials })
export const bool = (value: boolean, trials: Trials = NONE): Datum => ({ is: 'bool', bool: value, trials })
export const none = (code: string, detail: Missing['detail'] = {}, trials: Trials = NONE): Datum => ({
  is: 'none',
  missing: { code, detail },
  trials,
})
export const list = (items: readonly Datum[]): Datum => ({ is: 'list', items })

/** The trials that a value rests on, each once. */
export function trialsOf(...data: readonly Datum[]): Trials {
  const single = data.length === 1 ? data[0] : undefined
  if (single !== undefined && 'trials' in single) return single.trials
  const found = new Set<string>()
  for (const datum of data) collect(datum, found)
  return [...found]
}

function collect(datum: Datum, into: Set<string>): void {
  if ('trials' in datum) for (const id of datum.trials) into.add(id)
  else for (const part of partsOf(datum)) collect(part, into)
}

/** What a list, map or record is made of; nothing for a single value. */
export function partsOf(datum: Datum): readonly Datum[] {
  if (datum.is === 'list') return datum.items
  if (datum.is === 'map') return [...datum.entries.values()]
  return datum.is === 'record' ? Object.values(datum.fields) : []
}

/** The single values in a list or map, maps within maps opened: what a function over rows looks at. */
export const valuesIn = (datum: Datum): readonly Datum[] =>
  partsOf(datum).flatMap((part) => (part.is === 'map' ? valuesIn(part) : [part]))

/** The same value, resting on further trials too. */
export function restingOn(datum: Datum, trials: Trials): Datum {
  if (trials.length === 0 || !('trials' in datum)) return datum
  return { ...datum, trials: [...new Set([...datum.trials, ...trials])] }
}

/** A value as it leaves an evaluation: reasons and trials of parts are left behind. */
export function plain(datum: Datum): Value {
  switch (datum.is) {
    case 'number':
      return { n: datum.n, over: datum.over }
    case 'text':
      return datum.text
    case 'bool':
      return datum.bool
    case 'none':
      return null
    case 'list':
      return datum.items.map(plain)
    case 'record':
      return { record: mapped(Object.entries(datum.fields)) }
    case 'map':
      return { record: mapped([...datum.entries]) }
  }
}

const mapped = (entries: readonly (readonly [string, Datum])[]): Record<string, Value> =>
  Object.fromEntries(entries.map(([name, part]) => [name, plain(part)]))
