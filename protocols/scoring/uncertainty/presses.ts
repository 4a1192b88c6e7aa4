/** The presses that a time is taken by, each with its standard uncertainty and its bias. */
import type { Step } from '../../language/model.ts'
import { STEP_KINDS } from '../../language/schema/kinds.ts'
import type { Trial } from '../../runner/view.ts'
import type { ExaminerTiming } from './examiner-timing.ts'

/** What began or ended a time: a word that was said, something that was seen; null: the file doesn't tell. */
export type End = 'said' | 'seen' | null

/** One press. The start is shared by all times of its trial, so that what is wrong with it is wrong in all of them. */
export interface Press {
  readonly trial: string
  /** The column that it ends; null: the start. */
  readonly column: string | null
  readonly end: End
  /** Standard uncertainty, s. */
  readonly u: number
  /** By how much it comes too late, s; null where that isn't known. */
  readonly bias: number | null
}

export interface TimingGround {
  readonly steps: ReadonlyMap<string, Step>
  readonly examiner: ExaminerTiming
  /** Smallest step of the clock, ms; null where it wasn't measured. */
  readonly resolutionMs: number | null
}

/** A wired key is read late by 12 to 27 ms (bench figures of a community forum, seen): only the spread counts. */
const KEY_SPREAD = 0.015 / Math.sqrt(12)

/** A clock whose resolution wasn't measured is taken as one of a millisecond. */
const UNKNOWN_RESOLUTION_MS = 1

/** A rectangular distribution of that width has this standard uncertainty: GUM 4.3.7. */
const ofStep = (width: number): number => width / Math.sqrt(12)

/** Columns of a trial that are times between two presses and have a value. */
function timesIn(trial: Trial, step: Step) {
  const { readings } = trial
  const filled = filledColumn(trial, step)
  return Object.entries(STEP_KINDS.get(step.kind)?.ends?.(step) ?? {}).filter(
    ([column]) =>
      column !== filled && typeof readings[column]?.value === 'number' && readings[column].over === false,
  )
}

/** The column that holds what an outcome counts as: nobody pressed for 121 s that stand for a task not done. */
function filledColumn({ outcome }: Trial, step: Step): string | undefined {
  if (outcome === null || outcome === 'done' || step.countsAs[outcome] === undefined) return undefined
  return Object.keys(STEP_KINDS.get(step.kind)?.columns(step) ?? {})[0]
}

/** All presses behind the times of these trials. */
export function pressesOf(trials: readonly Trial[], ground: TimingGround): readonly Press[] {
  const watch = watchStep(trials, ground)
  return trials.flatMap((trial) => {
    const step = ground.steps.get(trial.step)
    const times = step === undefined ? [] : timesIn(trial, step)
    const [first] = times
    if (first === undefined) return []
    const isTyped = (column: string) => trial.readings[column]?.typed === true
    const start = pressed(
      trial,
      null,
      first[1].start,
      ground,
      times.every(([column]) => isTyped(column)) ? 0 : null,
    )
    return [
      start,
      ...times.map(([column, { stop }]) =>
        pressed(trial, column, stop, ground, isTyped(column) ? watch : null),
      ),
    ]
  })
}

/** @param watch the step that a time typed from another watch was read to, s; null: it came from an input here */
function pressed(
  { id }: Trial,
  column: string | null,
  end: End,
  { examiner, resolutionMs }: TimingGround,
  watch: number | null,
): Press {
  const machine =
    watch === null
      ? Math.hypot(KEY_SPREAD, ofStep((resolutionMs ?? UNKNOWN_RESOLUTION_MS) / 1000))
      : ofStep(watch)
  const bias = end === null ? null : end === 'seen' ? examiner.reaction : 0
  return { trial: id, column, end, u: Math.hypot(examiner.spread, machine), bias }
}

/**
 * What a watch was read to, judged by the finest time typed in this administration: a zero at the end of a number isn't
 * kept, so one time alone doesn't tell.
 */
function watchStep(trials: readonly Trial[], { steps }: TimingGround): number {
  const typed = trials.flatMap((trial) => {
    const step = steps.get(trial.step)
    return (step === undefined ? [] : timesIn(trial, step)).flatMap(([column]) => {
      const reading = trial.readings[column]
      return reading?.typed && typeof reading.value === 'number' ? [reading.value] : []
    })
  })
  return [1, 0.1].find((step) => typed.every((value) => isWhole(value / step))) ?? 0.01
}

const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-9

/** Trials as they would stand if each press had come later by that many seconds. */
export function shifted(
  trials: readonly Trial[],
  presses: readonly Press[],
  late: readonly number[],
): readonly Trial[] {
  const byTrial = Map.groupBy(
    presses.map(({ trial, column }, at) => ({ trial, column, by: late[at] ?? 0 })),
    ({ trial }) => trial,
  )
  return trials.map((trial) => {
    const moved = byTrial.get(trial.id)
    if (moved === undefined) return trial
    const start = moved.find(({ column }) => column === null)?.by ?? 0
    const readings = { ...trial.readings }
    for (const { column, by } of moved) {
      const reading = column === null ? undefined : readings[column]
      if (column !== null && typeof reading?.value === 'number')
        readings[column] = { ...reading, value: reading.value + by - start }
    }
    return { ...trial, readings }
  })
}
