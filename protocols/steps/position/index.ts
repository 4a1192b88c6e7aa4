import type { StepKind } from '../kind.ts'
import { onceDone, pressed } from '../press.ts'
import { press } from '../telling.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'

export default {
  kind: 'position',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns: () => ({}),
  plausible: () => null,
  precedes: true,
  events: { set: pressed },
  chart: onceDone('set'),
  face,
  rehearse: (_moment, random) => ({
    event: 'set',
    after: 1500 + random() * 5000,
    data: (stamp) => ({ stamp }),
  }),
  outcomes: () => [{ label: 'set', events: [press('set')] }],
} satisfies StepKind
