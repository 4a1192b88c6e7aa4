/**
 * Watches the page's monotonic clock against the machine's wall clock. Whether a monotonic clock goes on while the
 * machine sleeps differs from system to system, so a trial that ran across a sleep has no time that can be trusted.
 */

/** Both clocks, read together, in ms. */
export interface Reading {
  readonly monotonic: number
  readonly wall: number
}

/** Why the clocks can't be trusted since the look before: the page stood still, or the two moved apart. */
export type Distrust = 'suspended' | 'clock_changed'

/** How often the clocks are looked at by themselves. */
export const LOOK_EVERY = 500

/** A look that comes this much too late means that the page, or the whole machine, stood still. */
const STILL = 3000

/**
 * The clocks may move apart by so much between two looks. A wall clock that is slewed gains or loses 0.5 ms a second
 * at most (from memory); a jump of more is a clock that was set, or a sleep that the monotonic clock has missed.
 */
const APART = 250

/** What two looks at the clocks tell; null: nothing is wrong. */
export function distrust(before: Reading, now: Reading): Distrust | null {
  const passed = now.monotonic - before.monotonic
  if (passed > LOOK_EVERY + STILL) return 'suspended'
  return Math.abs(now.wall - before.wall - passed) > APART ? 'clock_changed' : null
}

/** Reads both clocks with nothing between: a pause between two readings would look like a jump. */
export function readTogether(monotonic: () => number, wall: () => number): Reading {
  for (let attempt = 0; ; attempt += 1) {
    const before = monotonic()
    const read = { monotonic: before, wall: wall() }
    if (monotonic() - before < 5 || attempt === 4) return read
  }
}

const readClocks = (): Reading =>
  readTogether(
    () => performance.now(),
    () => Date.now(),
  )

export interface ClockWatch {
  /** Looks at once; false when the clocks can't be trusted since the look before, which `told` then has heard. */
  readonly look: () => boolean
  readonly end: () => void
}

/** Looks at the clocks every half second, and whenever it is asked to, until it is ended. */
export function watchClocks(told: (why: Distrust) => void, read: () => Reading = readClocks): ClockWatch {
  let before = read()
  const look = (): boolean => {
    const now = read()
    const why = distrust(before, now)
    before = now
    if (why !== null) told(why)
    return why === null
  }
  const timer = setInterval(look, LOOK_EVERY)
  return { look, end: () => clearInterval(timer) }
}
