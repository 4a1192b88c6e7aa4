import type { StepKind } from '../kind.ts'
import { keys } from './keys.ts'

export default {
  kind: 'rest',
  keys,
  texts: [],
  cues: [],
  values: { least: 'quantity' },
  columns: () => ({}),
  events: {},
  chart: { initial: 'waiting' },
  face: () => ({}),
  rehearse: () => [],
} satisfies StepKind
