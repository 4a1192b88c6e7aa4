/** Short tones beside what is seen. Every one of them has a visible equivalent, so that silence loses nothing. */

/** What a tone tells: the next press starts the clock, the clock runs, time is over. */
export type Tone = 'armed' | 'go' | 'end'

interface Shape {
  readonly hertz: number
  readonly seconds: number
  /** Seconds after which it sounds again; null: once. */
  readonly again: number | null
}

const SHAPES: Readonly<Record<Tone, Shape>> = {
  armed: { hertz: 520, seconds: 0.06, again: null },
  go: { hertz: 880, seconds: 0.14, again: null },
  end: { hertz: 440, seconds: 0.35, again: 0.45 },
}

const LOUDNESS = 0.25
const EDGE = 0.008

let context: AudioContext | null = null
let sounding: OscillatorNode[] = []

function sound(on: AudioContext, shape: Shape, at: number): OscillatorNode {
  const gain = on.createGain()
  gain.gain.setValueAtTime(0, at)
  gain.gain.linearRampToValueAtTime(LOUDNESS, at + EDGE)
  gain.gain.setValueAtTime(LOUDNESS, at + shape.seconds - EDGE)
  gain.gain.linearRampToValueAtTime(0, at + shape.seconds)
  const tone = new OscillatorNode(on, { frequency: shape.hertz })
  tone.connect(gain).connect(on.destination)
  tone.start(at)
  tone.stop(at + shape.seconds)
  return tone
}

/** Sounds a tone. A machine that can't sound stays silent: what is seen says the same. */
export function play(tone: Tone): void {
  if (typeof AudioContext === 'undefined') return
  context ??= new AudioContext()
  if (context.state === 'suspended') void context.resume()
  const shape = SHAPES[tone]
  const at = context.currentTime
  sounding = [sound(context, shape, at)]
  if (shape.again !== null) sounding.push(sound(context, shape, at + shape.again))
}

/** Ends whatever still sounds: part of a stop for the client's sake. */
export function hush(): void {
  for (const tone of sounding) tone.stop()
  sounding = []
}
