import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent, StepKind } from '../kind.ts'
import { chart, checked } from './chart.ts'
import { face, piecesOf } from './face.ts'
import { keys } from './keys.ts'

const allTicked = (moment: StepMoment, after: number): RehearsedEvent => ({
  event: 'checked',
  after,
  data: (stamp) => ({ ticked: [...piecesOf(moment)], problems: [], stamp }),
})

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
  rehearse: (moment, random) => allTicked(moment, 3000 + random() * 6000),
  outcomes: (moment) => [{ label: 'checked', events: [allTicked(moment, 2000)] }],
} satisfies StepKind
