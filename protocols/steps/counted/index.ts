import type { StepKind } from '../kind.ts'
import { armed, started } from '../arming.ts'
import { tapped, windowEnded } from '../window.ts'
import { chart, entered, fieldsOf, kept } from './chart.ts'
import { columns } from './columns.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'
import { outcomes } from './outcomes.ts'
import { rehearse } from './rehearse.ts'

/** A trial that counts what is done within a window: tapped along, entered at the end, both kept. */
export default {
  kind: 'counted',
  keys,
  texts: [],
  cues: ['start'],
  values: { window: 'time' },
  columns,
  plausible: (moment, column) => (column === 'count' ? fieldsOf(moment).range : null),
  precedes: false,
  events: { armed, started, tapped, window_ended: windowEnded, entered, kept },
  chart,
  face,
  rehearse,
  outcomes,
} satisfies StepKind
