import type { Check } from '../check.ts'
import type { Item } from '../model.ts'
import { unitFactor, unitOf } from '../units.ts'

type Value = Item['properties'][string]

/**
 * What it does: A property is of one kind in all items of its list: words, yes or no, numbers, or quantities that can be
 * converted into each other.
 *
 * Why it matters: Formulas read the property as that of the first item; in an item of another kind it has no value.
 *
 * Example:
 *     loads: [{ id: light, mass: 50 g }, { id: heavy, mass: 20 cm }]
 *
 * Instead:
 *     loads: [{ id: light, mass: 50 g }, { id: heavy, mass: 0.2 kg }]
 */
export default {
  code: 'property_mixed',
  severity: 'error',
  needs: ['lists'],
  *run({ draft }) {
    for (const [list, items] of Object.entries(draft.lists)) {
      const first = new Map<string, { readonly value: Value; readonly id: string }>()
      for (const item of items) {
        for (const [name, value] of Object.entries(item.properties)) {
          const before = first.get(name)
          if (before === undefined) first.set(name, { value, id: item.id })
          else if (!isAlike(before.value, value)) {
            yield {
              at: draft.at(item, name),
              message: `"${name}" is ${kindOf(value)} here, and ${kindOf(before.value)} in "${before.id}" of the list "${list}".`,
              mend: 'Write both in the same way.',
            }
          }
        }
      }
    }
  },
} satisfies Check

/** A bare number takes the unit of the first; an unknown unit is told where it is written. */
function isAlike(first: Value, other: Value): boolean {
  if (typeof first !== 'object') return typeof first === typeof other
  if (typeof other !== 'object') return typeof other === 'number'
  if (unitOf(first.unit) === null || unitOf(other.unit) === null) return true
  return unitFactor(other.unit, first.unit) !== null
}

function kindOf(value: Value): string {
  if (typeof value === 'object') return `in ${value.unit}`
  if (typeof value === 'string') return 'a text'
  return typeof value === 'number' ? 'a bare number' : 'true or false'
}
