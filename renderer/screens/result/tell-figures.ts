/** What tables of percentiles, L, M and S, cut-offs or bands say of a value, in words. */
import type { NormFigures } from '../../../protocols/scoring/result.ts'
import { tellNumber } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'

type Tell = (value: number) => string

/** Percentiles are whole numbers; those below the first or above the 99th are not spelled out further. */
export function tellPercentile(percentile: number): string {
  if (percentile < 1) return say('result.below_first')
  if (percentile > 99) return say('result.above_last')
  return say('result.ordinal', { number: Number(tellNumber(percentile, 0)) })
}

/** What the row states, around the value where it states a whole curve; null beyond the outermost percentiles. */
export function tellFigures(figures: NormFigures, tell: Tell): string | null {
  switch (figures.statistic) {
    case 'percentiles':
      return tellNeighbours(figures, tell)
    case 'lms':
      return say('result.figures.lms', {
        l: tellNumber(figures.l, 4),
        m: tellNumber(figures.m, 4),
        s: tellNumber(figures.s, 4),
      })
    case 'cut-offs':
      return say('result.figures.cut', { side: figures.side, cut: tell(figures.cut) })
    case 'bands': {
      const { band, from, below } = figures
      if (band === null) return null
      const open = from === null ? (below === null ? 'both' : 'below') : below === null ? 'from' : 'no'
      return say('result.figures.band', { open, from: tell(from ?? 0), below: tell(below ?? 0) })
    }
  }
}

function tellNeighbours(
  { under, over }: Extract<NormFigures, { statistic: 'percentiles' }>,
  tell: Tell,
): string | null {
  if (under === null || over === null) return null
  if (under.value === over.value)
    return say('result.figures.at', {
      under: tellPercentile((under.rank + over.rank) / 2),
      low: tell(under.value),
    })
  return say('result.figures.between', {
    under: tellPercentile(under.rank),
    low: tell(under.value),
    over: tellPercentile(over.rank),
    high: tell(over.value),
  })
}

/** Where the table itself puts the value; null where z and percentile are worked out from what it states. */
export function tellByTable(percentile: number | null, figures: NormFigures): string | null {
  if (figures.statistic === 'lms') return null
  if (figures.statistic === 'cut-offs') return say('result.standing_band', { band: figures.band })
  if (figures.statistic === 'bands')
    return figures.band === null ? null : say('result.standing_band', { band: figures.band })
  if (percentile !== null) return say('result.standing_tabulated', { percentile: tellPercentile(percentile) })
  const { beyond } = figures
  return beyond && say('result.standing_beyond', { side: beyond.side, rank: tellPercentile(beyond.rank) })
}
