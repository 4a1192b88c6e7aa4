/** What a chart over time draws: plain data and the sums on it, without a screen. */

interface SeriesPoint {
  readonly id: string
  readonly at: Date
  /** null: nothing was measured on this occasion; the table says so, the line stops. */
  readonly value: number | null
  /** The value is a bound: "at least". */
  readonly over: boolean
  /** False where it was given otherwise than the time before: no line leads to it. */
  readonly joins: boolean
}

export interface Series {
  readonly id: string
  readonly label: string
  readonly points: readonly SeriesPoint[]
}

export interface DrawnPoint extends SeriesPoint {
  readonly value: number
}

const isDrawn = (point: SeriesPoint): point is DrawnPoint => point.value !== null

/** The points that have a place in the chart, in the order of time. */
export function drawn(series: Series): readonly DrawnPoint[] {
  return inTime(series).filter(isDrawn)
}

function inTime(series: Series): readonly SeriesPoint[] {
  return [...series.points].sort((one, other) => one.at.getTime() - other.at.getTime())
}

/**
 * The runs of points that a line may join: a point that doesn't join, or one without a value, ends the run
 * before it. A run of one point has no line.
 */
export function runs(series: Series): readonly (readonly DrawnPoint[])[] {
  const found: DrawnPoint[][] = []
  let open = false
  for (const point of inTime(series)) {
    if (!isDrawn(point)) {
      open = false
      continue
    }
    const last = found.at(-1)
    if (open && point.joins && last !== undefined) last.push(point)
    else found.push([point])
    open = true
  }
  return found
}

/** Least and greatest value over all series; null when there is no value at all. */
export function extent(all: readonly Series[]): readonly [number, number] | null {
  const values = all.flatMap((series) => drawn(series).map((point) => point.value))
  return values.length === 0 ? null : [Math.min(...values), Math.max(...values)]
}

/** First and last moment over all series, drawn or not; null when there are no points. */
export function span(all: readonly Series[]): readonly [Date, Date] | null {
  const times = all.flatMap((series) => series.points.map((point) => point.at.getTime()))
  return times.length === 0 ? null : [new Date(Math.min(...times)), new Date(Math.max(...times))]
}

/**
 * Moves labels apart that would lie on each other: keeps their order, moves each as little as it must, and
 * keeps all between `top` and `bottom` where there is room.
 */
export function apart(at: readonly number[], least: number, top: number, bottom: number): readonly number[] {
  const order = at.map((_, index) => index).sort((one, other) => (at[one] ?? 0) - (at[other] ?? 0))
  const placed = [...at]
  let edge = top
  for (const index of order) {
    placed[index] = Math.max(at[index] ?? 0, edge)
    edge = (placed[index] ?? 0) + least
  }
  edge = bottom
  for (const index of order.toReversed()) {
    placed[index] = Math.min(placed[index] ?? 0, edge)
    edge = (placed[index] ?? 0) - least
  }
  return placed
}
