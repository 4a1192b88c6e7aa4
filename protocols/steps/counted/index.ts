import { columns } from './columns.ts'
import type { StepKind } from '../kind.ts'
import { keys } from './keys.ts'

export default {
  kind: 'counted',
  keys,
  texts: [],
  cues: ['start'],
  values: { window: 'quantity' },
  columns: columns,
  events: {},
  chart: { initial: 'waiting' },
  face: () => ({}),
  rehearse: () => [],
} satisfies StepKind
