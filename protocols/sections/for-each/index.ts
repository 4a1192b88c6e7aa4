import { chart } from './chart.ts'
import { sizeOf } from './draw.ts'
import type { SectionKind } from '../kind.ts'
import { type ForEachFields, keys } from './keys.ts'
import { namedOrders } from './orders.ts'
import { itemType } from './item-type.ts'

/** Steps around these see the item of the pass under the section's name. */
export default {
  kind: 'for-each',
  keys,
  texts: [],
  values: {},
  conditions: ['where'],
  loop: (section, lists) => ({ name: section.name, type: itemType(String(section.fields.in), lists) }),
  passes: ({ name, fields }, draws) => {
    const list = String(fields.in)
    return { loop: name, list, numbered: Object.hasOwn(draws, list) }
  },
  found: null,
  chart,
  onSheet: ({ fields }, draws) => {
    const each = fields as unknown as ForEachFields
    const isFixed = Object.hasOwn(draws, each.in) || namedOrders(each).some((order) => order !== 'chosen')
    return isFixed ? 'ordered' : 'free'
  },
  most: ({ fields }, draws) => {
    const { in: list, take } = fields as unknown as ForEachFields
    const draw = draws[list]
    return draw === undefined ? null : (take ?? sizeOf(draw))
  },
  chooses: null,
} satisfies SectionKind
