/** A made-up client at the desk: how a trial goes, told from what its face says and a number from 0 up to 1. */
import type { Place } from '../../protocols/runner/events.ts'
import type { StepView } from '../../protocols/runner/view.ts'
import type { AskFace } from '../../protocols/steps/ask/face.ts'
import type { CountedFace } from '../../protocols/steps/counted/face.ts'
import type { MeasuredFace } from '../../protocols/steps/measured/face.ts'
import type { RatedFace } from '../../protocols/steps/rated/face.ts'
import type { TimedFace } from '../../protocols/steps/timed/face.ts'

interface AtTrial {
  readonly name: string
  readonly place: Place
  readonly face: StepView['face']
  /** How often the client was asked at this step in this place before. */
  readonly turn: number
}

/**
 * How the client does, in place of the number drawn: of a time or value what part of the longest or of the range, of
 * answers and grades how far down their list. At 1 a time goes to its limit.
 */
export type Does = (at: AtTrial, drawn: number) => number | undefined

/** The longest that an unhurried client takes where there is no limit, in seconds. */
const LONGEST = 34

const within = ([lowest, highest]: readonly [number, number], part: number, decimals: number): number =>
  Number((lowest + (highest - lowest) * part).toFixed(decimals))

const oneOf = <T>(list: readonly T[], part: number): T | undefined =>
  list[Math.min(list.length - 1, Math.floor(part * list.length))]

export class MadeUpClient {
  readonly #random: () => number
  readonly #does: Does
  readonly #turns = new Map<string, number>()

  constructor(random: () => number, does: Does) {
    this.#random = random
    this.#does = does
  }

  #part({ name, place, face }: Pick<StepView, 'name' | 'place' | 'face'>, usual: (drawn: number) => number) {
    const key = JSON.stringify([name, place])
    const turn = this.#turns.get(key) ?? 0
    this.#turns.set(key, turn + 1)
    const drawn = this.#random()
    return this.#does({ name, place, face, turn }, drawn) ?? usual(drawn)
  }

  /** How long it takes, in seconds; beyond the limit where the client doesn't get there. */
  seconds(step: StepView): number {
    const { limit } = step.face as unknown as TimedFace
    const longest = limit === null ? LONGEST : Math.min(LONGEST, limit)
    const part = this.#part(step, (drawn) => 0.3 + 0.6 * drawn)
    if (part >= 1 && limit !== null) return limit + 0.5
    return Math.max(0.4, Number((longest * part).toFixed(4)))
  }

  /** How far it went when the limit came. */
  reached(step: StepView, most: number | null): number {
    return Math.floor(this.#part(step, (drawn) => drawn) * (most ?? 10))
  }

  count(step: StepView): number {
    const { plausible } = step.face as unknown as CountedFace
    return within(
      plausible,
      this.#part(step, (drawn) => 0.3 + 0.2 * drawn),
      0,
    )
  }

  /** How many taps are made in a window of a second or two. */
  taps(step: StepView): number {
    return 5 + Math.floor(this.#part(step, (drawn) => drawn) * 3)
  }

  value(step: Pick<StepView, 'name' | 'place' | 'face'>): number {
    const { plausible, decimals } = step.face as unknown as MeasuredFace
    return within(
      plausible,
      this.#part(step, (drawn) => 0.2 + 0.25 * drawn),
      decimals ?? 1,
    )
  }

  /** Which of the grades that may be given here. */
  grade(step: Pick<StepView, 'name' | 'place' | 'face'>): number {
    const open = (step.face as unknown as RatedFace).grades.filter(({ above }) => !above)
    return (
      oneOf(
        open,
        this.#part(step, (drawn) => drawn),
      )?.grade ?? 0
    )
  }

  answer(step: Pick<StepView, 'name' | 'place' | 'face'>): string | number {
    const { options, number } = step.face as unknown as AskFace
    const part = this.#part(step, (drawn) => (number === null ? drawn : 0.3 + 0.4 * drawn))
    if (number !== null) return within(number.plausible, part, number.decimals ?? 0)
    return oneOf(options, part)?.id ?? 'a word'
  }
}
