/** How a trial begins by the one key: a first press arms, the next one starts the clock. */
import type { Effect, StepMove } from '../runner/chart-parts.ts'
import type { Stamp } from '../runner/events.ts'
import type { StepMoment } from '../runner/moment.ts'
import { refuse } from '../runner/refuse.ts'
import type { Refusal } from '../runner/view.ts'
import { keyDead, move, stamped } from './press.ts'

export const armed = stamped
export const started = stamped

export const startOf = (moment: StepMoment): Stamp | null => (moment.local.start as Stamp | undefined) ?? null

export const arms = move(armed, {
  to: 'armed',
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
  does: (_moment, { stamp }) => ({ local: { armed: stamp } }),
})

interface Starting {
  /** Why it can't be started at all. */
  readonly refuses?: (moment: StepMoment) => Refusal | null
  /** What the kind notes beside the start. */
  readonly local?: (moment: StepMoment, start: Stamp) => Effect['local']
}

/** The trial begins with a press that comes after the one that armed it. */
export const startsWith = ({ refuses, local }: Starting): StepMove =>
  move(started, {
    to: 'running',
    main: true,
    refuses: (moment, { stamp }) => {
      const refusal = refuses?.(moment) ?? null
      if (refusal !== null) return refusal
      const before = moment.local.armed as Stamp
      return stamp.clock === before.clock && stamp.at <= before.at ? refuse('out_of_order') : null
    },
    does: (moment, { stamp }) => ({
      local: { start: stamp, ...local?.(moment, stamp) },
      begins: { input: stamp.input, stamps: [stamp.at] },
    }),
  })
