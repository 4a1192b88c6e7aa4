/** Where a value stands among the values of a group, in per cent. Three definitions are in use; ties tell them apart. */
export interface PercentileRanks {
  /** Per cent of the group below the value. */
  readonly below: number
  /** Per cent of the group at the value or below it. */
  readonly atOrBelow: number
  /** Per cent below, and half of those at the value: the one that is used where ranks are shown. */
  readonly halfOfTies: number
}

/** Null for a group of nobody. */
export function percentileRanks(group: readonly number[], value: number): PercentileRanks | null {
  const n = group.length
  if (n === 0) return null
  const below = group.filter((one) => one < value).length
  const at = group.filter((one) => one === value).length
  return {
    below: (100 * below) / n,
    atOrBelow: (100 * (below + at)) / n,
    halfOfTies: (50 * (2 * below + at)) / n,
  }
}
