import type { ClockTime, StepMoment } from '../../runner/moment.ts'
import { fieldsOf } from './chart.ts'

/** What the screen draws of a reading that is typed in from an instrument. */
export type MeasuredFace = {
  readonly unit: string
  readonly decimals: number | null
  /** Values outside it are refused as `out_of_range` until they are confirmed. */
  readonly plausible: readonly [number, number]
  readonly value: number | null
  readonly attempt: number
  readonly voidsLeft: number | null
  /** The key is dead for a second from here. */
  readonly dead: ClockTime | null
}

export function face(moment: StepMoment): MeasuredFace {
  const fields = fieldsOf(moment)
  const value = moment.trial?.readings.value?.value
  return {
    unit: fields.unit,
    decimals: fields.decimals ?? null,
    plausible: fields.range,
    value: typeof value === 'number' ? value : null,
    attempt: moment.attempt,
    voidsLeft: moment.voidsLeft,
    dead: moment.dead,
  }
}
