import type { StepMoment } from '../../runner/moment.ts'
import type { RehearsedEvent, StepKind } from '../kind.ts'
import { chart, entered, fieldsOf, kept } from './chart.ts'
import { columns } from './columns.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'
import { outcomes } from './outcomes.ts'

/** A value in the lower half of what is plausible, as an instrument shows it. */
function rehearse(moment: StepMoment, random: () => number): RehearsedEvent | null {
  if (moment.state === 'entered') {
    return { event: 'kept', after: 1500 + random() * 2000, data: (stamp) => ({ stamp }) }
  }
  const { decimals, range } = fieldsOf(moment)
  const value = Number((range[0] + (range[1] - range[0]) * (0.2 + random() * 0.25)).toFixed(decimals ?? 1))
  return { event: 'entered', after: 6000 + random() * 6000, data: () => ({ value, confirmed: false }) }
}

/** A trial whose value is read from an instrument and typed. */
export default {
  kind: 'measured',
  keys,
  texts: [],
  cues: [],
  values: {},
  columns,
  plausible: (moment) => fieldsOf(moment).range,
  precedes: false,
  events: { entered, kept },
  chart,
  onSheet: () => ({ gives: 'entered', keeps: 'kept' }),
  face,
  rehearse,
  outcomes,
} satisfies StepKind
