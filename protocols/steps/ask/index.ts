import type { StepKind } from '../kind.ts'
import { answered, chart, fieldsOf, kept, misfits } from './chart.ts'
import { columns } from './columns.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'
import { outcomes } from './outcomes.ts'
import { rehearse } from './rehearse.ts'

/** A trial that is an answer: one of several options, a number, or a few words. */
export default {
  kind: 'ask',
  keys,
  texts: ['options.*'],
  cues: [],
  values: {},
  columns,
  plausible: (moment, column) => (column === 'answer' ? (fieldsOf(moment).range ?? null) : null),
  misfits,
  precedes: false,
  events: { answered, kept },
  chart,
  onSheet: () => ({ gives: 'answered', keeps: 'kept' }),
  face,
  rehearse,
  outcomes,
} satisfies StepKind
