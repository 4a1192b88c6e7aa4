/** What a norm table that isn't of means and SDs says of a value, in words. */
import type { NormComparison, NormFigures } from '../../../protocols/scoring/result.ts'
import { placesOf, shownValue } from '../../../protocols/scoring/rounding.ts'
import { say } from '../words.ts'

type Stratum = NormComparison['strata'][number]

const shown = (value: number | null, decimals: number): string =>
  value === null ? '–' : shownValue(value, decimals)

/** To a tenth; what lies beyond the first and the last one is not spelled out as 0 or 100. */
export function percentText(percentile: number): string {
  const tenths = shownValue(percentile, 1)
  const side = tenths === '0.0' ? 'below' : tenths === '100.0' ? 'above' : 'none'
  return say('norm.percent', { side, shown: tenths })
}

/** The columns of the table's own that chose a row: `schooling 12 years`. */
export const chosenText = ({ chosenBy }: Stratum): string =>
  Object.entries(chosenBy)
    .map((cell) => cell.join(' ').replaceAll('_', ' '))
    .join(', ') || 'none'

export function figuresText({ z, percentile }: Stratum, figures: NormFigures, decimals: number): string {
  const rank = percentile === null ? '–' : percentText(percentile)
  const written = (figure: number) => shownValue(figure, placesOf(figure, decimals))
  switch (figures.statistic) {
    case 'percentiles': {
      const [under, over] = [figures.under, figures.over].map((one) =>
        one === null ? null : written(one.value),
      )
      const beyond = figures.beyond ?? { side: 'none', rank: 0 }
      return say('norm.percentiles', {
        percentile: rank,
        beyond: beyond.side,
        rank: beyond.rank,
        under: under ?? '–',
        over: over ?? '–',
      })
    }
    case 'lms':
      return say('norm.lms', {
        l: String(figures.l),
        m: shownValue(figures.m, decimals + 1),
        s: String(figures.s),
        z: shown(z, 2),
        percentile: rank,
      })
    case 'cut-offs':
      return say('norm.cut_offs', {
        side: figures.side,
        cut: written(figures.cut),
        band: figures.band,
      })
    case 'bands':
      return figures.band === null ? say('norm.no_band') : say('norm.bands', { band: figures.band })
  }
}
