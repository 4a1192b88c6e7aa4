const MOST_CHARACTERS = 100

/** The name that was most likely meant: at most two letters added, dropped, changed or swapped with a neighbour. */
export function nearest(name: string, among: Iterable<string>): string | null {
  // Nobody means another name by a text of this length, and comparing long ones takes their lengths multiplied.
  if (name.length > MOST_CHARACTERS) return null
  let best: string | null = null
  let least = name.length <= 3 ? 2 : 3
  for (const candidate of among) {
    if (Math.abs(candidate.length - name.length) >= least) continue
    const distance = edits(name, candidate)
    if (distance < least) {
      best = candidate
      least = distance
    }
  }
  return best
}

/** Edit distance with swaps of neighbours (optimal string alignment). */
function edits(a: string, b: string): number {
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      const step = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same)
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      row.push(swapped ? Math.min(step, (before[j - 2] ?? 0) + 1) : step)
    }
    before = last
    last = row
  }
  return last[b.length] ?? 0
}
