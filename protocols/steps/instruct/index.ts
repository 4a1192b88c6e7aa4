import type { StepKind } from '../kind.ts'
import { keys } from './keys.ts'

export default {
  kind: 'instruct',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns: () => ({}),
  events: {},
  chart: { initial: 'waiting' },
  face: () => ({}),
  rehearse: () => [],
} satisfies StepKind
