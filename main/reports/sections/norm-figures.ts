/** What tables of percentiles, L, M and S, cut-offs or bands say of a value, in words. */
import type { NormComparison, NormFigures } from '../../../protocols/scoring/result.ts'
import { placesOf } from '../../../protocols/scoring/rounding.ts'
import { amount } from '../figures.ts'
import { say } from '../words.ts'

type Stratum = NormComparison['strata'][number]

/** Ranks run from the 1st to the 99th; beyond them a row says no more than that. */
export function rank(percentile: number): string {
  if (percentile < 1) return say('percentile.below_first')
  if (percentile > 99) return say('percentile.above_last')
  return say('percentile', { number: Math.round(percentile) })
}

/** The rank of a performance, or the outermost one of the table that it lies beyond. */
export function rankWords(percentile: number | null, figures: NormFigures): string {
  if (percentile !== null) return rank(percentile)
  if (figures.statistic !== 'percentiles' || figures.beyond === null) return ''
  return say('figures.beyond', { side: figures.beyond.side, rank: rank(figures.beyond.rank) })
}

export function figuresWords({ z }: Stratum, figures: NormFigures, decimals: number): string {
  const bare = (value: number | null, places = value === null ? decimals : placesOf(value, decimals)) =>
    value === null ? '' : amount(value, places, '1')
  switch (figures.statistic) {
    case 'percentiles':
      return neighbours(figures, bare)
    case 'lms': {
      const [l, m, s] = [figures.l, figures.m, figures.s].map((value) => bare(value, 4))
      return say('figures.lms', { l: l ?? '', m: m ?? '', s: s ?? '', z: bare(z, 2) })
    }
    case 'cut-offs': {
      const { side, cut, band } = figures
      return say('figures.cut', { side, cut: bare(cut), band })
    }
    case 'bands': {
      const { band, from, below } = figures
      if (band === null) return say('norm.status.no_band')
      const open = from === null ? (below === null ? 'both' : 'below') : below === null ? 'from' : 'no'
      return say('figures.band', { band, open, from: bare(from), below: bare(below) })
    }
  }
}

function neighbours(
  { under, over }: Extract<NormFigures, { statistic: 'percentiles' }>,
  bare: (value: number) => string,
): string {
  const outermost = under ?? over
  if (under === null || over === null)
    return outermost === null ? '' : say('figures.outermost', { value: bare(outermost.value) })
  if (under.value === over.value)
    return say('figures.at', { under: rank((under.rank + over.rank) / 2), low: bare(under.value) })
  return say('figures.between', {
    under: rank(under.rank),
    low: bare(under.value),
    over: rank(over.rank),
    high: bare(over.value),
  })
}
