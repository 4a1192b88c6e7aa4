/**
 * Short tones at moments of the page's clock, made by an oscillator and timed by the audio clock: a page that is busy
 * then sounds them all the same. Each has a visible equivalent, so that silence loses nothing.
 */
import type { SIGNALS } from '../../protocols/runner/events.ts'

/** What a signal tells: the next press starts the clock, the clock runs, half of the time is over, all of it is. */
export type Signal = (typeof SIGNALS)[number]

interface Shape {
  readonly hertz: number
  readonly seconds: number
  /** How often it sounds, one after another. */
  readonly times: number
}

const SHAPES: Readonly<Record<Signal, Shape>> = {
  ready: { hertz: 520, seconds: 0.06, times: 1 },
  go: { hertz: 880, seconds: 0.14, times: 1 },
  half: { hertz: 660, seconds: 0.1, times: 2 },
  end: { hertz: 440, seconds: 0.35, times: 2 },
}

const LOUDNESS = 0.25
const EDGE = 0.008
/** Seconds between two sounds of one signal. */
const BETWEEN = 0.1

/** A tone that will sound, or has sounded. */
export interface Tone {
  /** When it can be heard, in ms on the page's clock, as far as the output tells by now. */
  readonly heardAt: () => number
  /** Ends it, whether it sounds already or not yet. */
  readonly end: () => void
}

/** How long an output is waited for, in ms. */
const PATIENCE = 300

const waited = (): Promise<void> => new Promise((done) => setTimeout(done, PATIENCE))

let context: AudioContext | null = null
let tones: Tone[] = []

/**
 * When what is scheduled for a moment of the audio clock can be heard, in ms on the page's clock: by the moment at which
 * the output last was, or, before it tells one, by the delay that it says it has.
 */
export function heardAt(
  on: Pick<AudioContext, 'getOutputTimestamp' | 'currentTime' | 'baseLatency' | 'outputLatency'>,
  time: number,
  now: number,
): number {
  const { contextTime = 0, performanceTime = 0 } = on.getOutputTimestamp()
  if (performanceTime > 0) return performanceTime + (time - contextTime) * 1000
  const delay = (on.baseLatency ?? 0) + (on.outputLatency ?? 0)
  return now + (time - on.currentTime + delay) * 1000
}

function oscillate(on: AudioContext, shape: Shape, from: number): OscillatorNode {
  const gain = on.createGain()
  gain.gain.setValueAtTime(0, from)
  gain.gain.linearRampToValueAtTime(LOUDNESS, from + EDGE)
  gain.gain.setValueAtTime(LOUDNESS, from + shape.seconds - EDGE)
  gain.gain.linearRampToValueAtTime(0, from + shape.seconds)
  const tone = new OscillatorNode(on, { frequency: shape.hertz })
  tone.connect(gain).connect(on.destination)
  tone.start(from)
  tone.stop(from + shape.seconds)
  return tone
}

function schedule(on: AudioContext, signal: Signal, at: number): Tone {
  const shape = SHAPES[signal]
  const now = performance.now()
  // As much earlier on the audio clock as the way to the ear takes, but never in its past.
  const from = Math.max(on.currentTime, on.currentTime + (at - heardAt(on, on.currentTime, now)) / 1000)
  const oscillators = Array.from({ length: shape.times }, (_, index) =>
    oscillate(on, shape, from + index * (shape.seconds + BETWEEN)),
  )
  return {
    heardAt: () => heardAt(on, from, performance.now()),
    end: () => {
      for (const each of oscillators) each.stop()
    },
  }
}

/**
 * Sounds a signal at a moment of the page's clock, or at once if that has passed. Null where this machine can't sound:
 * what is seen then says it. A press or click has to have come before, or the browser keeps its sound back.
 */
export async function sound(signal: Signal, at: number): Promise<Tone | null> {
  if (typeof AudioContext === 'undefined') return null
  try {
    context ??= new AudioContext()
    if (context.state !== 'running') await Promise.race([context.resume(), waited()])
    if (context.state !== 'running') return null
    const tone = schedule(context, signal, at)
    tones = [...tones.slice(-20), tone]
    return tone
  } catch {
    // No output device, or one that is gone: silence is no fault of the test.
    return null
  }
}

/** Ends whatever sounds or will: part of a stop for the client's sake. */
export function hush(): void {
  for (const tone of tones) tone.end()
  tones = []
}
