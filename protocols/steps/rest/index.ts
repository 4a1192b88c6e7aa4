import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent, StepKind } from '../kind.ts'
import { began, chart, cut, fromOf, leastOf, over } from './chart.ts'
import { clockEvent } from '../telling.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'

function rehearse(moment: StepMoment): RehearsedEvent | null {
  if (moment.state === 'waiting') {
    return { event: 'began', after: 200, data: ({ at, clock }) => ({ at, clock }) }
  }
  const from = fromOf(moment)?.at ?? 0
  const least = 1000 * (leastOf(moment) ?? 0)
  return {
    event: 'over',
    after: least,
    data: ({ at, clock }) => ({ at: Math.max(at, from + least), clock }),
  }
}

/** A least time before the next trial; cutting it short takes a reason and is a deviation. */
export default {
  kind: 'rest',
  keys,
  texts: [],
  cues: [],
  values: { least: 'time' },
  columns: () => ({}),
  plausible: () => null,
  precedes: false,
  events: { began, over, cut },
  chart,
  face,
  rehearse,
  outcomes: (moment) => [
    {
      label: 'over',
      events: [clockEvent('began', 200), clockEvent('over', 1000 * (leastOf(moment) ?? 0))],
    },
  ],
} satisfies StepKind
