/**
 * A figure as a screen shows it. One that is of one hand says so at its root (`data-hand="right"`); for the
 * other hand it is mirrored, and its letters and digits stay readable.
 */
export type HandShown = 'left' | 'right'

export interface ShownFigure {
  /** The drawing itself, as SVG text. */
  readonly drawing: string
  /** Its title and description, for those who can't see it; empty where it has none. */
  readonly words: string
  /** The hand that it shows; null where that makes no difference. */
  readonly hand: HandShown | null
}

// No tag of a sound drawing holds a bracket within: so one that is never closed is passed over at once.
const ROOT = /<svg\b[^<>]*>/
const HAND = /\sdata-hand\s*=\s*["']([^"']*)["']/
const VIEW_BOX =
  /\sviewBox\s*=\s*["']\s*([-\d.eE+]+)[\s,]+[-\d.eE+]+[\s,]+([-\d.eE+]+)[\s,]+[-\d.eE+]+\s*["']/

/** What is written at the root as the hand of the drawing; null where nothing is. */
export const writtenHand = (svg: string): string | null => HAND.exec(ROOT.exec(svg)?.[0] ?? '')?.[1] ?? null

/** Twice the middle of the drawing, about which it is mirrored; null where it gives no `viewBox`. */
export function mirrorSum(svg: string): number | null {
  const [, left, width] = VIEW_BOX.exec(ROOT.exec(svg)?.[0] ?? '') ?? []
  const sum = 2 * Number(left) + Number(width)
  return left === undefined || !Number.isFinite(sum) ? null : sum
}

/** The figure for the hand at hand; for null, and where it can't be mirrored, as it is drawn. */
export function shownFigure(svg: string, hand: HandShown | null): ShownFigure {
  const written = writtenHand(svg)
  const drawn = written === 'left' || written === 'right' ? written : null
  const words = [wordsIn(svg, 'title'), wordsIn(svg, 'desc')].filter((each) => each !== '').join('. ')
  const sum = mirrorSum(svg)
  if (drawn === null || hand === null || hand === drawn || sum === null) {
    return { drawing: svg, words, hand: drawn }
  }
  return { drawing: mirrored(svg, sum), words, hand }
}

/** A drawing within the drawing. */
const FIELD = /(<svg\b[^<>]*>)([^]*?)(?=<\/svg)/g
const FIELD_WIDTH = /\swidth\s*=\s*["']([\d.]+)["']/

/** Drawings side by side stay in their order: each is mirrored in its own place, and what stands about them isn't. */
function mirrored(svg: string, sum: number): string {
  const end = svg.lastIndexOf('</svg')
  const root = ROOT.exec(svg)
  if (root === null || end < 0) return svg
  const begin = root.index + root[0].length
  const within = svg.slice(begin, end)
  const fields = [...within.matchAll(FIELD)]
  const inPlace = fields.length > 0 && fields.every(([, tag = '']) => FIELD_WIDTH.test(tag))
  const turned = inPlace
    ? within.replace(FIELD, (_, tag: string, inner: string) => {
        return tag + turnedAbout(inner, Number(FIELD_WIDTH.exec(tag)?.[1]))
      })
    : turnedAbout(within, sum)
  return svg.slice(0, begin) + turned + svg.slice(end)
}

const turnedAbout = (shapes: string, sum: number): string =>
  `<g transform="matrix(-1 0 0 1 ${sum} 0)">${shapes.replace(/<text\b[^<>]*>/g, uprightText)}</g>`

const ENDS: Readonly<Record<string, string>> = { start: 'end', end: 'start' }

/** Turns a line of text about its own anchor, so that it reads as before within what is mirrored. */
function uprightText(tag: string): string {
  const x = Number(/\sx\s*=\s*["']([^"']*)["']/.exec(tag)?.[1] ?? 0)
  if (!Number.isFinite(x)) return tag
  const anchor = /\stext-anchor\s*=\s*["']([^"']*)["']/.exec(tag)?.[1] ?? 'start'
  const before = /\stransform\s*=\s*["']([^"']*)["']/.exec(tag)?.[1] ?? ''
  const rest = tag.replace(/\s(?:text-anchor|transform)\s*=\s*(?:"[^"]*"|'[^']*')/g, '')
  const turned = `${before} matrix(-1 0 0 1 ${2 * x} 0)`.trim()
  return rest.replace('<text', `<text text-anchor="${ENDS[anchor] ?? anchor}" transform="${turned}"`)
}

const CHARACTERS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

function wordsIn(svg: string, element: 'title' | 'desc'): string {
  const [, text = ''] = new RegExp(`<${element}(?:\\s[^<>]*)?>([^<]*)<`).exec(svg) ?? []
  const plain = text.replace(/&(amp|lt|gt|quot|apos);/g, (whole, name: string) => CHARACTERS[name] ?? whole)
  return plain.replace(/\s+/g, ' ').trim()
}
