/** All figures of the library: a file of `library/` draws those of the protocol it is named after. */
import { shownFigure } from '../../protocols/language/figures/shown-figure.ts'
import { type Figures, svgOf } from './pen.ts'

const FILES = import.meta.glob<{ figures: Figures }>('./library/*.ts', { eager: true })

type DrawnProtocol = readonly [protocol: string, figures: readonly (readonly [name: string, svg: string])[]]

/** Each protocol's folder with its figures' names and SVG texts, in the order of the names. */
export function drawn(): readonly DrawnProtocol[] {
  return Object.entries(FILES)
    .map(([path, { figures }]): readonly [string, Figures] => [path.replace(/^.*\/|\.ts$/g, ''), figures])
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, figures]) => [name, Object.entries(figures).map(([figure, made]) => [figure, svgOf(made)])])
}

const STYLE = `
body { margin: 1rem; font: 14px sans-serif; color: #111; background: #fff }
section { display: grid; grid-template-columns: repeat(auto-fill, minmax(20rem, 1fr)); gap: 0.75rem }
figure { margin: 0; border: 1px solid #999; padding: 0.5rem }
img { inline-size: 100%; display: block }
figcaption { margin-block-start: 0.4rem }
`

/** A page with every figure as the program shows it, one of one hand for both, and its words beneath. */
export function contactSheet(): string {
  const parts = drawn().map(([protocol, figures]) => {
    const shown = figures.flatMap(([name, svg]) => {
      const [right, left] = [shownFigure(svg, 'right'), shownFigure(svg, 'left')]
      return (right.hand === null ? [right] : [right, left]).map(({ drawing, words, hand }) => {
        const source = `data:image/svg+xml;utf8,${encodeURIComponent(drawing)}`
        return `<figure><img src="${source}" alt=""><figcaption><b>${name}</b> ${hand ?? ''}<br>${words}</figcaption></figure>`
      })
    })
    return `<h2>${protocol}</h2><section>${shown.join('')}</section>`
  })
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Figures of the library</title><style>${STYLE}</style>${parts.join('')}</html>`
}
