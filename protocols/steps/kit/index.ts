import type { StepKind } from '../kind.ts'
import { chart, checked } from './chart.ts'
import { face, piecesOf } from './face.ts'
import { keys } from './keys.ts'

export default {
  kind: 'kit',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns: () => ({}),
  plausible: () => null,
  precedes: true,
  events: { checked },
  chart,
  face,
  rehearse: (moment, random) => ({
    event: 'checked',
    after: 3000 + random() * 6000,
    data: (stamp) => ({ ticked: [...piecesOf(moment)], problems: [], stamp }),
  }),
} satisfies StepKind
