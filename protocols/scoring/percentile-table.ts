/** Where a value stands among tabulated percentiles. */
export interface Tabulated {
  readonly rank: number
  readonly value: number
}

export interface InTable {
  /** Counted from the lowest value up; null beyond the outermost percentiles, where nothing is made up. */
  readonly rank: number | null
  /** The tabulated percentiles around the value; null where it lies beyond the outermost. */
  readonly under: Tabulated | null
  readonly over: Tabulated | null
}

/**
 * Between two tabulated percentiles the rank grows linearly with the value. Where several percentiles share the value,
 * it has the middle of their ranks: half of the ties count as below. `table` rises by rank.
 */
export function rankInTable(table: readonly Tabulated[], value: number): InTable {
  const at = table.filter((one) => one.value === value)
  const [first, last] = [at[0], at.at(-1)]
  if (first !== undefined && last !== undefined)
    return { rank: (first.rank + last.rank) / 2, under: first, over: last }
  const under = table.findLast((one) => one.value < value) ?? null
  const over = table.find((one) => one.value > value) ?? null
  if (under === null || over === null) return { rank: null, under, over }
  const part = (value - under.value) / (over.value - under.value)
  return { rank: under.rank + part * (over.rank - under.rank), under, over }
}
