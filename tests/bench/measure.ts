/** Ratios in one run: ours and the baseline take turns, and medians are compared. */
import { appendFileSync } from 'node:fs'

interface Bar {
  /** What the ratio may be at most (`<=`) or must be at least (`>=`). */
  readonly most?: number
  readonly least?: number
}

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? 0)
    : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2
}

/** One turn: does the thing once and gives the time it took in ms. */
type Turn = () => number | Promise<number>

export async function turnAbout(
  rounds: number,
  ours: Turn,
  baseline: Turn,
): Promise<{ ours: number; baseline: number }> {
  const mine: number[] = []
  const theirs: number[] = []
  for (let round = 0; round < rounds; round += 1) {
    // Who goes first changes each round, so that neither has the warmer machine.
    if (round % 2 === 0) {
      mine.push(await ours())
      theirs.push(await baseline())
    } else {
      theirs.push(await baseline())
      mine.push(await ours())
    }
  }
  return { ours: median(mine), baseline: median(theirs) }
}

/** Hands a figure to `npm run bench`, which prints it. */
export function figure(name: string, ratio: number, bar: Bar): void {
  const file = process.env['EVENHAND_FIGURES']
  const holds =
    (bar.most === undefined || ratio <= bar.most) && (bar.least === undefined || ratio >= bar.least)
  const said = bar.most === undefined ? `>= ${bar.least}` : `<= ${bar.most}`
  if (file !== undefined)
    appendFileSync(file, `${JSON.stringify({ name, ratio: Number(ratio.toFixed(3)), bar: said, holds })}\n`)
}
