import { chart } from './chart.ts'
import type { SectionKind } from '../kind.ts'
import { keys, type RepeatFields } from './keys.ts'

/** Steps around these see the number of the pass, from 1, under the section's name. */
export default {
  kind: 'repeat',
  keys,
  texts: [],
  values: { times: 'number', 'times.least': 'number', 'times.most': 'number' },
  conditions: ['until'],
  loop: (section) => ({ name: section.name, type: { is: 'number', unit: null } }),
  passes: (section) => ({ loop: section.name, list: null, numbered: false }),
  found: null,
  chart,
  onSheet: ({ fields }) => {
    // In a faulty file the number may be missing, which is told where it is missing.
    const { times, until } = fields as unknown as Partial<RepeatFields>
    return until === undefined && !(times && 'least' in times) ? 'free' : null
  },
  most: ({ fields }, _draws, count) => {
    const { times } = fields as unknown as RepeatFields
    return 'least' in times ? (count(times.most) ?? count(times.least)) : count(times)
  },
  chooses: null,
} satisfies SectionKind
