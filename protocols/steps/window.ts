/** What trials have in common that count what is done within a window. */
import { AGAIN, type Effect, type StepMove } from '../runner/chart-parts.ts'
import type { Stamp } from '../runner/events.ts'
import type { From, Quantity } from '../language/model.ts'
import type { StepMoment } from '../runner/moment.ts'
import { refuse } from '../runner/refuse.ts'
import type { Refusal } from '../runner/view.ts'
import { startOf, startsWith } from './arming.ts'
import { clocked, clockTime, move, stamped, stillLeft } from './press.ts'

export const tapped = stamped
export const windowEnded = clocked

/** The window in seconds; null where its expression has no value here. */
export const windowOf = (moment: StepMoment): number | null =>
  moment.quantity(moment.step.fields.window as From<Quantity>, 's')

/** The window opens with a press; `local` is what the kind notes beside the start. */
export const opensWith = (local: (moment: StepMoment, start: Stamp) => Effect['local']): StepMove =>
  startsWith({
    refuses: (moment) => (windowOf(moment) === null ? refuse('no_window') : null),
    local,
  })

/** Why a press can't be one of this window at all. */
export function notOfWindow(moment: StepMoment, stamp: Stamp): Refusal | null {
  const start = startOf(moment)
  if (start === null || stamp.clock !== start.clock) return refuse('other_clock')
  return stamp.at <= start.at ? refuse('out_of_order') : null
}

/** By its stamp, not by when it was handled. */
export const isAfterWindow = (moment: StepMoment, stamp: Stamp): boolean =>
  stamp.at - (startOf(moment)?.at ?? stamp.at) > 1000 * (windowOf(moment) ?? 0)

/** A window that ends on another clock gives no count. */
const breaks = move(windowEnded, {
  to: AGAIN,
  automatic: true,
  when: (moment, end) => startOf(moment)?.clock !== end.clock,
  does: (_moment, end) => ({
    void: { happening: null, cause: 'clock_changed' },
    dead: clockTime(end),
    ends: clockTime(end),
  }),
})

/** The window ends by the clock; `gives` is what the kind then knows of the trial and notes. */
export const endsWith = (
  to: string,
  gives: (moment: StepMoment, end: number) => Pick<Effect, 'local' | 'trial'>,
): readonly StepMove[] => [
  breaks,
  move(windowEnded, {
    to,
    automatic: true,
    refuses: (moment, end) => {
      const left = stillLeft(startOf(moment) ?? end, end, windowOf(moment) ?? 0)
      return left === null ? null : refuse('window_not_over', { leftMs: left })
    },
    does: (moment, end) => ({ ...gives(moment, end.at), dead: clockTime(end), ends: clockTime(end) }),
  }),
]
