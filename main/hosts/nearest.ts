/** The candidate that somebody who typed `given` most likely meant, or null when none is near. */
export function nearest(given: string, candidates: readonly string[]): string | null {
  const ranked = candidates
    .map((candidate) => ({ candidate, far: distance(given, candidate) }))
    .sort((a, b) => a.far - b.far)
  const [best] = ranked
  return best && best.far <= Math.max(2, Math.floor(given.length / 3)) ? best.candidate : null
}

/** Levenshtein's distance: the fewest single letters to put in, take out or change. */
function distance(from: string, to: string): number {
  let above = Array.from({ length: to.length + 1 }, (_, index) => index)
  for (const [row, letter] of [...from].entries()) {
    const here = [row + 1]
    for (const [column, other] of [...to].entries()) {
      const changed = (above[column] ?? 0) + (letter === other ? 0 : 1)
      here.push(Math.min(changed, (above[column + 1] ?? 0) + 1, (here[column] ?? 0) + 1))
    }
    above = here
  }
  return above.at(-1) ?? 0
}
