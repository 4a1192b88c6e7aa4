import type { StepKind } from '../kind.ts'
import { onceDone, pressed } from '../press.ts'
import { press } from '../telling.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'

export default {
  kind: 'instruct',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns: () => ({}),
  plausible: () => null,
  precedes: true,
  events: { said: pressed },
  chart: onceDone('said'),
  face,
  rehearse: (_moment, random) => ({
    event: 'said',
    after: 4000 + random() * 12000,
    data: (stamp) => ({ stamp }),
  }),
  outcomes: () => [{ label: 'said', events: [press('said')] }],
} satisfies StepKind
