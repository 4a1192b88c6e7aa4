import type { StepKind } from '../kind.ts'
import { armed, started } from '../arming.ts'
import { chart, kept, limitReached, plausible, stopped, typed } from './chart.ts'
import { columns, ends } from './columns.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'
import { outcomes } from './outcomes.ts'
import { reached, mostOf, notReached } from './reached.ts'
import { rehearse } from './rehearse.ts'
import { split } from './splits.ts'

/** A trial whose time is the difference of two input stamps; `added` is what happenings add to it. */
export default {
  kind: 'timed',
  keys,
  texts: ['reached.*.text', 'splits.*'],
  cues: ['start', 'stop'],
  values: { limit: 'time', 'reached.*.of': 'number' },
  columns,
  ends,
  plausible: (moment, column) => (column === 'time' ? plausible(moment) : null),
  misfits: (moment, column, value) =>
    mostOf(moment, column) === null ? null : notReached(moment, column, Number(value)),
  precedes: false,
  events: { armed, started, stopped, kept, typed, limit_reached: limitReached, reached, split },
  chart,
  face,
  rehearse,
  outcomes,
} satisfies StepKind
