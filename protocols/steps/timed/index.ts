import type { StepKind } from '../kind.ts'
import { armed, chart, kept, limitReached, plausible, started, stopped, typed } from './chart.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'
import { rehearse } from './rehearse.ts'

/** A trial whose time is the difference of two input stamps; `added` is what happenings add to it. */
export default {
  kind: 'timed',
  keys,
  texts: [],
  cues: ['start', 'stop'],
  values: { limit: 'time' },
  columns: () => ({ time: { is: 'number', unit: 's' }, added: { is: 'number', unit: 's' } }),
  plausible: (moment, column) => (column === 'time' ? plausible(moment) : null),
  precedes: false,
  events: { armed, started, stopped, kept, typed, limit_reached: limitReached },
  chart,
  face,
  rehearse,
} satisfies StepKind
