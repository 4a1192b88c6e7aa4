/** The signals of a trial: heard or only seen, at the same moments, and kept with the trial. */
import { useEffect, useState } from 'react'
import type { AdministrationView, StepView } from '../../../protocols/runner/view.ts'
import { CLOCK } from '../../input/clock.ts'
import { hush, type Signal, sound, type Tone } from '../../input/sound.ts'
import type { SignalDue } from '../../steps/face.ts'
import { faceOf } from '../../steps/registry.ts'
import type { Desk } from './desk.ts'
import { useNewest } from './use-newest.ts'

/** How long a signal is seen, in ms. */
const SEEN_FOR = 900
/** By so many ms after its moment a tone was heard, and the output tells when. */
const HEARD = 20

/** A signal that was planned and how to call it off; one whose moment has come goes on. */
interface Planned {
  readonly callOff: () => void
}

interface Plan {
  readonly signal: Signal
  readonly at: number
  readonly isOn: boolean
  /** Shows it, or hides it again. */
  readonly show: (signal: Signal, isShown: boolean) => void
  /** The moment at which it was heard, or the frame that showed it. */
  readonly given: (by: 'sound' | 'sight', at: number) => void
}

function plan({ signal, at, isOn, show, given }: Plan): Planned {
  let isOff = false
  const sounding: Promise<Tone | null> = isOn ? sound(signal, at) : Promise.resolve(null)
  const tell = async (frame: number): Promise<void> => {
    const tone = await sounding
    if (isOff) return
    if (tone === null) return given('sight', frame)
    const left = Math.max(0, tone.heardAt() - performance.now())
    setTimeout(() => given('sound', tone.heardAt()), left + HEARD)
  }
  const silence = async (): Promise<void> => (await sounding)?.end()
  const timer = setTimeout(
    () => {
      show(signal, true)
      setTimeout(() => show(signal, false), SEEN_FOR)
      requestAnimationFrame((frame) => void tell(frame))
    },
    Math.max(0, at - performance.now()),
  )
  return {
    callOff: () => {
      if (performance.now() >= at) return
      isOff = true
      clearTimeout(timer)
      void silence()
    },
  }
}

/** Moments of this page's clock at which signals are due; a start on another page's clock has none. */
const momentsOf = (due: readonly SignalDue[]): readonly { readonly signal: Signal; readonly at: number }[] =>
  due.flatMap(({ signal, from, ms }) => {
    if (from === null) return [{ signal, at: performance.now() }]
    return from.clock === CLOCK ? [{ signal, at: from.at + ms }] : []
  })

/**
 * Gives the signals of the step at hand and tells the host when each could be heard or seen. Gives back the one to show
 * now. Nothing of the trial waits for it, and what was planned is called off once the step stands otherwise.
 */
export function useSignals(desk: Desk, view: AdministrationView | null, isOn: boolean): Signal | null {
  const step: StepView | null = view?.phase === 'giving' ? view.step : null
  const now = useNewest(step)
  const key = step === null ? null : JSON.stringify([step.name, step.place, step.state])
  const [shown, setShown] = useState<Signal | null>(null)
  useEffect(() => {
    const at = now.current
    if (key === null || at === null) return hush()
    const planned = momentsOf(faceOf(at).signals(at)).map((each) =>
      plan({
        ...each,
        isOn,
        show: (signal, isShown) =>
          setShown((before) => (isShown ? signal : before === signal ? null : before)),
        given: (by, moment) =>
          void desk.act(
            () => ({
              kind: 'signalled',
              step: at.name,
              place: at.place,
              signal: each.signal,
              by,
              at: Math.max(0, moment),
              clock: CLOCK,
            }),
            true,
          ),
      }),
    )
    return () => {
      for (const { callOff } of planned) callOff()
    }
  }, [desk, key, isOn, now])
  return shown
}
