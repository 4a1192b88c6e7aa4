import type { StepKind } from '../kind.ts'
import { onceDone, pressed } from '../press.ts'
import { press } from '../telling.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'

export default {
  kind: 'demonstrate',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns: () => ({}),
  plausible: () => null,
  precedes: false,
  events: { shown: pressed },
  chart: onceDone('shown'),
  face,
  rehearse: (_moment, random) => ({
    event: 'shown',
    after: 6000 + random() * 14000,
    data: (stamp) => ({ stamp }),
  }),
  outcomes: () => [{ label: 'shown', events: [press('shown')] }],
} satisfies StepKind
