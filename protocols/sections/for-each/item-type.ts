import type { ValueType } from '../../language/expressions/types.ts'
import type { Item, Lists } from '../../language/model.ts'

const TEXT: ValueType = { is: 'text' }

/** What steps see of a hand: its side, how it stands to the client, and which pass this is. */
const HAND: ValueType = {
  is: 'record',
  fields: {
    id: TEXT,
    affected: { is: 'bool' },
    dominant: { is: 'bool' },
    turn: { is: 'number', unit: null },
  },
}

function propertyType(value: Item['properties'][string]): ValueType {
  if (typeof value === 'string') return TEXT
  if (typeof value === 'boolean') return { is: 'bool' }
  return { is: 'number', unit: typeof value === 'number' ? null : value.unit }
}

/**
 * The type of a list's items as a loop shows them: `id`, `turn` (which pass this is, from 1) and the author's
 * own properties. A property that only some items have is there all the same; it is null in the others.
 */
export function itemType(list: string, lists: Lists): ValueType {
  if (list === 'hands') return HAND
  const fields: Record<string, ValueType> = { id: TEXT, turn: { is: 'number', unit: null } }
  for (const item of lists[list] ?? []) {
    for (const [name, value] of Object.entries(item.properties)) fields[name] ??= propertyType(value)
  }
  return { is: 'record', fields }
}
