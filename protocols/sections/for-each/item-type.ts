import type { ValueType } from '../../language/expressions/types.ts'
import { SIDES } from '../../client.ts'
import type { Item, Lists } from '../../language/model.ts'

/** What steps see of a hand: its side, how it stands to the client, and which pass this is. */
const HAND: ValueType = {
  is: 'record',
  fields: {
    id: { is: 'text', oneOf: SIDES },
    affected: { is: 'bool' },
    dominant: { is: 'bool' },
    turn: { is: 'number', unit: null },
  },
}

/** Of a text: the texts that the items have there, so that a comparison that can never hold is found. */
function propertyType(value: Item['properties'][string], items: readonly Item[], name: string): ValueType {
  if (typeof value === 'boolean') return { is: 'bool' }
  if (typeof value === 'number') return { is: 'number', unit: null }
  if (typeof value !== 'string') return { is: 'number', unit: value.unit }
  const texts = items.map(({ properties }) => properties[name]).filter((text) => typeof text === 'string')
  return { is: 'text', oneOf: [...new Set(texts)] }
}

/**
 * The type of a list's items as a loop shows them: `id`, `turn` (which pass this is, from 1) and the author's
 * own properties. A property that only some items have is there all the same; it is null in the others.
 */
export function itemType(list: string, lists: Lists): ValueType {
  if (list === 'hands') return HAND
  const items = lists[list] ?? []
  const fields: Record<string, ValueType> = {
    id: { is: 'text', oneOf: items.map(({ id }) => id) },
    turn: { is: 'number', unit: null },
  }
  for (const item of items) {
    for (const [name, value] of Object.entries(item.properties))
      fields[name] ??= propertyType(value, items, name)
  }
  return { is: 'record', fields }
}
