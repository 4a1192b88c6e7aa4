import { v7 } from 'uuid'

const LAST_IN_A_MILLISECOND = 0xffffffff

/**
 * Makes UUIDv7 ids (RFC 9562, method 1 of its section 6.2: a counter in the bits after the version). Ids from
 * one maker sort in the order they were made, within a millisecond and when the clock is set back. The counter
 * begins anew at a random value with each millisecond, low enough to leave room for two thousand million more.
 */
export function idMaker(now: () => number, random: (bytes: number) => Uint8Array): () => string {
  let at = Number.NEGATIVE_INFINITY
  let count = 0
  return () => {
    const bits = random(16)
    const wall = now()
    if (wall > at || count === LAST_IN_A_MILLISECOND) {
      at = Math.max(wall, at + 1)
      count = new DataView(bits.buffer, bits.byteOffset).getUint32(0) >>> 1
    } else {
      count += 1
    }
    return v7({ msecs: at, seq: count, random: bits })
  }
}
