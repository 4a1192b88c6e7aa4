/** Lists that are drawn: in which order the items of a draw come, with no more than so many alike in a row. */
import type { Draw } from '../../language/model.ts'

type Left = Readonly<Record<string, number>>

const sum = (left: Left): number => Object.values(left).reduce((all, each) => all + each, 0)

/** How many alike end what was drawn so far. */
function runOf(drawn: readonly string[]): { readonly item: string | null; readonly length: number } {
  const item = drawn.at(-1) ?? null
  const before = drawn.findLastIndex((each) => each !== item)
  return { item, length: drawn.length - 1 - before }
}

/**
 * True when what is left can still be laid out behind what was drawn: between others there is room for as many
 * alike as may stand in a row, and for those that go on the last run only what that run has left.
 */
function fits(left: Left, drawn: readonly string[], most: number): boolean {
  const all = sum(left)
  const run = runOf(drawn)
  return Object.entries(left).every(([item, count]) => {
    const first = item === run.item ? most - run.length : most
    return first >= 0 && count <= first + (all - count) * most
  })
}

/** The next item, each as likely as it is often left, among those after which the rest still fits. */
function next(
  left: Left,
  drawn: readonly string[],
  most: number | null,
  random: () => number,
): string | null {
  const open = Object.entries(left).filter(([item, count]) => {
    if (count === 0) return false
    return most === null || fits({ ...left, [item]: count - 1 }, [...drawn, item], most)
  })
  // Behind another bag a run may be too long for any order: then what is left comes as it can.
  const from = open.length > 0 ? open : Object.entries(left).filter(([, count]) => count > 0)
  let at = random() * from.reduce((all, [, count]) => all + count, 0)
  for (const [item, count] of from) {
    at -= count
    if (at < 0) return item
  }
  return from.at(-1)?.[0] ?? null
}

/** How many of each the bag still holds: it is filled anew whenever it is empty. */
function leftIn({ counts }: Draw, drawn: readonly string[]): Left {
  const since = drawn.slice(drawn.length - (drawn.length % sum(counts)))
  return Object.fromEntries(
    Object.entries(counts).map(([item, count]) => [
      item,
      count - since.filter((each) => each === item).length,
    ]),
  )
}

/** So many items from the bag, after what was drawn from it before. */
export function drawFrom(
  draw: Draw,
  before: readonly string[],
  take: number,
  random: () => number,
): string[] {
  const drawn = [...before]
  while (drawn.length < before.length + take) {
    const item = next(leftIn(draw, drawn), drawn, draw.alikeInRow, random)
    if (item === null) break
    drawn.push(item)
  }
  return drawn.slice(before.length)
}

/** True when the bag can have given these items, after what was drawn from it before. */
export function canGive(draw: Draw, before: readonly string[], items: readonly string[]): boolean {
  return items.every((item, index) => (leftIn(draw, [...before, ...items.slice(0, index)])[item] ?? 0) > 0)
}

/** How many items one draw has. */
export const sizeOf = ({ counts }: Draw): number => sum(counts)

/** True when a whole draw can be laid out with no more than so many alike in a row. */
export const canBeDrawn = ({ counts, alikeInRow }: Draw): boolean =>
  alikeInRow === null || fits(counts, [], alikeInRow)
