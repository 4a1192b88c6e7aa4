/** Samples of mutants, and what a share of a sample says of the whole. */

/** `size` of the items, each set of that size as likely as any other, in an order of the seed's (mulberry32). */
export function sampled<T>(items: readonly T[], size: number, seed: number): readonly T[] {
  let state = seed >>> 0
  const drawn = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  return items
    .map((item) => ({ item, key: drawn() }))
    .sort((a, b) => a.key - b.key)
    .slice(0, size)
    .map(({ item }) => item)
}

/**
 * The 95 % interval of a share, by Wilson's score method (E. B. Wilson, J Am Stat Assoc 1927; 22: 209-212):
 * `found` of `of`, as shares from 0 to 1. Of nothing it is the whole range.
 */
export function wilson(found: number, of: number): readonly [low: number, high: number] {
  if (of === 0) return [0, 1]
  const z = 1.959964
  const share = found / of
  const middle = share + z ** 2 / (2 * of)
  const half = z * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2))
  const scale = 1 + z ** 2 / of
  return [Math.max(0, (middle - half) / scale), Math.min(1, (middle + half) / scale)]
}
