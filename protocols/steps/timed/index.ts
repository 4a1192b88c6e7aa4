import type { StepKind } from '../kind.ts'
import { keys } from './keys.ts'

export default {
  kind: 'timed',
  keys,
  texts: [],
  cues: ['start', 'stop'],
  values: { limit: 'quantity' },
  columns: () => ({ time: { is: 'number', unit: 's' }, added: { is: 'number', unit: 's' } }),
  events: {},
  chart: { initial: 'waiting' },
  face: () => ({}),
  rehearse: () => [],
} satisfies StepKind
