import { randomFillSync } from 'node:crypto'

const POOL = 4096

/** Random bytes from the system, drawn many at a time: a salt and an id for every event add up. */
export function randomPool(): (bytes: number) => Uint8Array {
  const pool = Buffer.alloc(POOL)
  let used = POOL
  return (bytes) => {
    if (used + bytes > POOL) {
      randomFillSync(pool)
      used = 0
    }
    used += bytes
    return Uint8Array.prototype.slice.call(pool, used - bytes, used)
  }
}
