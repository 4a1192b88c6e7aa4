import type { LadderFields } from './keys.ts'

const STEP = { up: 1, down: -1 } as const

/**
 * The level after those given, by whether the last of them was accepted; null where the ladder is over: it has
 * turned as often as it may, or there is no further level on that side.
 * @param levels ids of the list's items
 * @param path the levels given so far, the one at hand last; how each was judged shows in where it led
 */
export function climb(
  { moves }: Pick<LadderFields, 'moves'>,
  levels: readonly string[],
  path: readonly string[],
  accepted: boolean,
  turns: number,
): string | null {
  const places = path.map((level) => levels.indexOf(level))
  const at = places.at(-1) ?? -1
  const way = STEP[accepted ? moves.accepted : moves.failed]
  const ways = [...places.slice(1).map((place, index) => Math.sign(place - (places[index] ?? place))), way]
  const turned = ways.filter((each, index) => index > 0 && each !== ways[index - 1]).length
  return turned >= turns ? null : (levels[at + way] ?? null)
}
