/**
 * A hybrid logical clock (Kulkarni, Demirbas et al., 2014): 48 bits of wall time in ms and a 16-bit counter, as
 * sixteen hex digits that sort like the moments. It only goes forward, follows the wall clock where it can, and
 * is ahead of every event this file has seen, so that after a merge an answer never sorts before its question.
 */
const COUNTS = 0x10000

export interface HybridClock {
  /** The stamp of the next event at this wall time. */
  tick(wall: number): string
}

const written = (wall: number, count: number) =>
  wall.toString(16).padStart(12, '0') + count.toString(16).padStart(4, '0')

/** @param last the greatest stamp seen so far, `null` where there is none */
export function hybridClock(last: string | null): HybridClock {
  let wall = last === null ? 0 : Number.parseInt(last.slice(0, 12), 16)
  let count = last === null ? -1 : Number.parseInt(last.slice(12), 16)
  return {
    tick(now) {
      if (now > wall) {
        wall = now
        count = 0
      } else if (count + 1 < COUNTS) {
        count += 1
      } else {
        wall += 1
        count = 0
      }
      return written(wall, count)
    },
  }
}
