/**
 * The safe part of SVG (W3C SVG 2): plain drawing. Told by a list of what is allowed, so that what nobody
 * thought of is refused. The text is only scanned, never given to a browser before this has passed.
 */

const SHAPES = 'path rect circle ellipse line polyline polygon text tspan marker'
const GROUPS = 'svg g defs symbol use title desc linearGradient radialGradient stop clipPath mask pattern'
const ELEMENTS = new Set(`${SHAPES} ${GROUPS}`.split(' '))

const KNOWN_ENTITIES = /^&(?:amp|lt|gt|quot|apos|#\d{1,7}|#x[0-9a-fA-F]{1,6});/

export interface UnsafePart {
  readonly is: 'unsafe' | 'malformed'
  /** Offsets into the text. */
  readonly start: number
  readonly end: number
  readonly message: string
  readonly mend: string
}

const TAG = /^<(\/?)([A-Za-z_][\w:.-]*)([\s\S]*?)(\/?)>$/
const ATTRIBUTE = /([^\s=/]+)\s*=\s*("[^"]*"|'[^']*')|(\S+)/g

/** Everything in a figure that can't be shown as it is; empty for a plain drawing. */
export function unsafeParts(text: string): readonly UnsafePart[] {
  const parts: UnsafePart[] = []
  const open: string[] = []
  let roots = 0
  for (const { start, end, closed } of markupIn(text)) {
    const markup = text.slice(start, end)
    const at = { start, end }
    if (markup === '&') {
      if (!KNOWN_ENTITIES.test(text.slice(start, start + 12))) parts.push(entity(at))
      continue
    }
    const special = specialPart(markup, at, closed)
    if (special !== undefined) {
      if (special) parts.push(special)
      continue
    }
    const tag = closed ? TAG.exec(markup) : null
    if (!tag) {
      parts.push(malformed(at, 'A tag begins here and is never closed'))
      continue
    }
    const [, closing, name = '', attributes = '', empty] = tag
    if (closing) {
      if (open.pop() !== name)
        parts.push(malformed(at, `"${name}" is closed here without having been opened last`))
      continue
    }
    if (open.length === 0) roots++
    if (open.length === 0 && name !== 'svg')
      parts.push(malformed(at, `The drawing begins with "${name}" instead of "svg"`))
    if (!ELEMENTS.has(name)) parts.push(element(at, name))
    parts.push(...attributeParts(attributes, start + 1 + name.length))
    if (!empty) open.push(name)
  }
  const end = { start: Math.max(0, text.length - 1), end: text.length }
  if (open.length > 0) parts.push(malformed(end, `"${open.at(-1)}" is never closed`))
  if (roots !== 1) parts.push(malformed({ start: 0, end: 0 }, 'The file holds no single svg drawing'))
  return parts
}

/** What begins and ends a stretch of markup, longest beginning first. */
const DELIMITERS = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
  ['<?', '?>'],
  ['<!', '>'],
  ['<', '>'],
] as const

interface Markup extends At {
  readonly closed: boolean
}

/** Tags, remarks, declarations and entities, in one pass: what is never closed goes to the end of the text. */
function* markupIn(text: string): Iterable<Markup> {
  for (let at = 0; at < text.length; ) {
    if (text[at] === '&') yield { start: at, end: at + 1, closed: true }
    if (text[at] !== '<') {
      at++
      continue
    }
    const [opener, closer] = DELIMITERS.find(([begins]) => text.startsWith(begins, at)) ?? ['<', '>']
    const found = text.indexOf(closer, at + opener.length)
    const end = found < 0 ? text.length : found + closer.length
    yield { start: at, end, closed: found >= 0 }
    at = end
  }
}

/** Null for a remark or a known entity, a problem for other markup that is no tag; undefined for a tag. */
function specialPart(markup: string, at: At, closed: boolean): UnsafePart | null | undefined {
  if (markup.startsWith('<!--')) {
    if (!closed) return malformed(at, 'A remark begins here and is never closed')
    // Two kinds of parsers end such a remark at different places.
    return /[<>]|--/.test(markup.slice(4, -3)) ? unsafe(at, 'A remark holds markup.', 'Take it away.') : null
  }
  if (markup.startsWith('<?')) {
    const isHeader = at.start === 0 && closed && markup.startsWith('<?xml ')
    return isHeader ? null : declaration(at, 'An instruction to a program')
  }
  if (!markup.startsWith('<!')) return undefined
  return declaration(at, markup.startsWith('<![') ? 'A CDATA section' : 'A document type')
}

/** Whether the drawing says in words what it shows. */
export function hasTitle(text: string): boolean {
  return /<title(?:\s[^<>]*)?>\s*[^<\s]/.test(text)
}

function* attributeParts(attributes: string, offset: number): Iterable<UnsafePart> {
  for (const found of attributes.matchAll(ATTRIBUTE)) {
    const [whole, name = '', quoted = '', stray] = found
    const start = offset + found.index
    const at = { start, end: start + whole.length }
    if (stray !== undefined) {
      yield malformed(at, `"${stray.slice(0, 20)}" is no attribute with a quoted value`)
      continue
    }
    const value = decoded(quoted.slice(1, -1))
    if (/&(?!(?:amp|lt|gt|quot|apos);)/.test(value)) yield entity(at)
    const local = name.toLowerCase().replace(/^.*:/, '')
    if (local.startsWith('on')) {
      yield unsafe(at, `The attribute "${name}" would run a program.`, 'Take it away.')
    } else if (local === 'href' && !value.startsWith('#')) {
      yield unsafe(
        at,
        'A reference leads out of the drawing.',
        'Refer only to parts of the drawing, such as "#arrow".',
      )
    } else if (local === 'base') {
      yield unsafe(at, 'A base address leads out of the drawing.', 'Take it away.')
    } else if (loads(value)) {
      yield unsafe(
        at,
        `The attribute "${name}" would load something.`,
        'Use plain colours, or refer to "url(#…)" inside the drawing.',
      )
    }
  }
}

/** A style that fetches: any url() but one of the drawing's own parts, an import, or an escape that hides one. */
function loads(value: string): boolean {
  const urls = [...value.matchAll(/url\s*\(\s*['"]?\s*([^)'"]*)/gi)]
  if (urls.some(([, target = '']) => !target.startsWith('#'))) return true
  return /@import|expression\s*\(|javascript:|data:|\\[0-9a-f]/i.test(value)
}

function decoded(value: string): string {
  return value.replace(/&#(?:x([0-9a-fA-F]{1,6})|(\d{1,7}));/g, (whole, hex?: string, decimal?: string) => {
    const point = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16)
    return point <= 0x10ffff ? String.fromCodePoint(point) : whole
  })
}

interface At {
  readonly start: number
  readonly end: number
}

function unsafe(at: At, message: string, mend: string): UnsafePart {
  return { is: 'unsafe', ...at, message, mend }
}

function element(at: At, name: string): UnsafePart {
  return unsafe(at, `The element "${name}" is not part of a plain drawing.`, 'Take it away, with all in it.')
}

function declaration(at: At, what: string): UnsafePart {
  return unsafe(at, `${what} is not part of a plain drawing.`, 'Take it away.')
}

function entity(at: At): UnsafePart {
  return unsafe(
    at,
    'A name after "&" stands for something declared elsewhere.',
    'Write the character itself, or &amp; for "&".',
  )
}

function malformed(at: At, what: string): UnsafePart {
  return { is: 'malformed', ...at, message: `${what}.`, mend: 'Save the drawing again as plain SVG.' }
}
