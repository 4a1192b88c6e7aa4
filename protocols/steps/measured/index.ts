import { columns } from './columns.ts'
import type { StepKind } from '../kind.ts'
import { keys } from './keys.ts'

export default {
  kind: 'measured',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns: columns,
  events: {},
  chart: { initial: 'waiting' },
  face: () => ({}),
  rehearse: () => [],
} satisfies StepKind
