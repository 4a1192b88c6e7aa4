import type { StepKind } from '../kind.ts'
import { chart, graded, kept, misfits } from './chart.ts'
import { face } from './face.ts'
import { highestOf } from './grades.ts'
import { keys } from './keys.ts'
import { outcomes } from './outcomes.ts'
import { rehearse } from './rehearse.ts'

/** A trial that is judged by the grades of a scale. */
export default {
  kind: 'rated',
  keys,
  texts: ['scale.*'],
  cues: [],
  values: {},
  formulas: {
    highest: { is: 'number', unit: '{score}' },
    'allow.from': { is: 'list', of: { is: 'number', unit: null } },
  },
  columns: () => ({ grade: { is: 'number', unit: '{score}' } }),
  plausible: (moment, column) => {
    const highest = column === 'grade' ? highestOf(moment) : null
    return typeof highest === 'number' ? [0, highest] : null
  },
  misfits,
  precedes: false,
  events: { graded, kept },
  chart,
  // One above the highest takes a reason, and a run of digits would be broken by asking for it.
  onSheet: ({ fields }) => (fields.highest === undefined ? { gives: 'graded', keeps: 'kept' } : null),
  face,
  rehearse,
  outcomes,
} satisfies StepKind
