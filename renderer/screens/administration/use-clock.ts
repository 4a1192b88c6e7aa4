/** The clock beside the chart: what time alone brings about, and what breaks a running trial off. */
import { useCallback, useEffect, useRef } from 'react'
import type { AdministrationView, StepView } from '../../../protocols/runner/view.ts'
import { measureClock, type Moment, momentNow } from '../../input/clock.ts'
import { type ClockWatch, watchClocks } from '../../input/clock-watch.ts'
import { whenOver } from '../../input/ticker.ts'
import { faceOf } from '../../steps/registry.ts'
import type { Desk } from './desk.ts'
import { isConfirmedHere } from './confirmed-here.ts'
import { breakIntent, dueIntent } from './intents.ts'
import { useNewest } from './use-newest.ts'

/** What tells one standing of a step from the next: a clock is set up anew only when this changes. */
const standing = (step: StepView): string =>
  JSON.stringify([step.name, step.place, step.state, faceOf(step).due(step, NEVER)])

/** ms until something that is due and was refused is told once more. */
const TELL_AGAIN = 500

const NEVER = { at: 0, clock: '' }

/** Sends what is due once its time is over; `look` sees first whether the clock it is due by can be trusted. */
export function useDue(desk: Desk, view: AdministrationView | null, look: () => boolean): void {
  const step = view?.phase === 'giving' ? view.step : null
  const now = useNewest(step)
  const key = step === null ? null : standing(step)
  useEffect(() => {
    const at = now.current
    if (key === null || at === null) return
    const due = faceOf(at).due(at, momentNow())
    if (due === null) return
    const here = { step: at.name, place: JSON.stringify(at.place) }
    let timer: ReturnType<typeof setTimeout> | undefined
    // A window, limit or rest that the chart doesn't take as over is told once more: it never hangs.
    const tell = async (moment: Moment): Promise<void> => {
      look()
      const { refusal } = await desk.act(dueIntent(here, due.event, { ...moment }), true)
      if (refusal !== null) timer = setTimeout(() => void tell(momentNow()), TELL_AGAIN)
    }
    const callOff = whenOver(due.from, due.ms, (moment) => void tell(moment))
    return () => {
      callOff()
      clearTimeout(timer)
    }
  }, [desk, key, now, look])
}

/** Tells the host once how finely this page's clock tells time apart. */
export function useClockTold(desk: Desk, phase: AdministrationView['phase'] | undefined): void {
  const told = useRef(false)
  useEffect(() => {
    if (phase !== 'giving' || told.current) return
    told.current = true
    void desk.act(() => ({ kind: 'clock', ...measureClock() }), true)
  }, [desk, phase])
}

/**
 * A page that was just loaded has confirmed nothing: what it finds being given was broken off by the loading, a
 * running trial is void, and client and hand are confirmed again.
 */
export function useOrphans(desk: Desk, view: AdministrationView | null): void {
  const told = useRef(false)
  useEffect(() => {
    if (view?.phase !== 'giving' || told.current || isConfirmedHere(view.id)) return
    told.current = true
    void desk.act(() => ({ kind: 'interrupted', cause: 'restart' }), true)
  }, [desk, view])
}

/**
 * Breaks a running trial off when its clock can't be trusted. Gives back how to look at once: false means that it was
 * just broken off, or would have been.
 */
export function useClockWatch(desk: Desk): () => boolean {
  const watch = useRef<ClockWatch | null>(null)
  useEffect(() => {
    watch.current = watchClocks((why) => void desk.act(breakIntent(why), true))
    return () => watch.current?.end()
  }, [desk])
  return useCallback(() => watch.current?.look() ?? true, [])
}
