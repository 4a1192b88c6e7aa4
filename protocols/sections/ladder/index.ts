import { itemType } from '../for-each/item-type.ts'
import type { SectionKind } from '../kind.ts'
import { chart } from './chart.ts'
import { keys } from './keys.ts'
import { row } from './row.ts'

/** Steps around these see the level at hand under the name that `level` gives; the ladder has a row of its own. */
export default {
  kind: 'ladder',
  keys,
  texts: [],
  values: { turns: 'number' },
  conditions: ['accepted', 'where'],
  formulas: { 'begin.from': { is: 'text' } },
  loop: ({ fields }, lists) => ({ name: String(fields.level), type: itemType(String(fields.over), lists) }),
  passes: ({ fields }) => ({ loop: String(fields.level), list: String(fields.over), numbered: true }),
  found: {
    columns: ({ fields }, lists) => {
      const type = itemType(String(fields.over), lists)
      if (type.is !== 'record') return {}
      const { turn: _turn, ...columns } = type.fields
      return columns
    },
    judgedBy: 'accepted',
    row,
  },
  chart,
  chooses: null,
} satisfies SectionKind
