/** The one module that knows the typesetter. It sees a template of ours and data, never a path or a package. */
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler'
import template from './report.typ?raw'

/** How often characters that can't be printed are replaced: fonts are tried a run of text at a time. */
const TRIES = 20

let compiler: NodeCompiler | null = null

/** Characters that no font here can show, as the typesetter names them in its error. */
class Unprintable extends Error {
  readonly characters: readonly string[]
  constructor(characters: readonly string[]) {
    super(`No font has these characters: ${characters.join(' ')}`)
    this.characters = characters
  }
}

const QUOTED = /the text `\\?"((?:[^`\\]|\\[^"])*)\\?"` could not be displayed/g

/** A character as the typesetter's error writes it: itself, or `\u{e123}`. */
const unescaped = (text: string): string =>
  text.replace(/\\+u\{([0-9a-f]+)\}/gi, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)))

function failure(error: unknown): Error {
  const text = error instanceof Error ? error.message : String(error)
  const characters = [...text.matchAll(QUOTED)].flatMap((found) => [...unescaped(found[1] ?? '')])
  return characters.length
    ? new Unprintable(characters)
    : new Error(`The report could not be typeset: ${text}`)
}

export interface Pdf {
  readonly bytes: Buffer
  readonly pages: number
}

function typeset(data: unknown, at: number): Pdf {
  compiler ??= NodeCompiler.create({ workspace: import.meta.dirname })
  const inputs = { data: JSON.stringify(data) }
  try {
    const compiled = compiler.compile({ mainFileContent: template, inputs, resetRead: true })
    const trouble = compiled.takeError() ?? compiled.takeWarnings()
    if (trouble) throw new Error(JSON.stringify(compiler.fetchDiagnostics(trouble)))
    if (!compiled.result) throw new Error('there is no document')
    const bytes = compiler.pdf(compiled.result, { pdfStandard: 'ua-1', creationTimestamp: at })
    return { bytes, pages: compiled.result.numOfPages }
  } catch (error) {
    throw failure(error)
  } finally {
    // The typesetter remembers what it has set, to be quicker the next time: a client's report is not kept so.
    compiler.evictCache(0)
  }
}

/** The same data with every string changed. */
function mapped(data: unknown, change: (text: string) => string): unknown {
  if (typeof data === 'string') return change(data)
  if (Array.isArray(data)) return data.map((one) => mapped(one, change))
  if (data === null || typeof data !== 'object') return data
  return Object.fromEntries(Object.entries(data).map(([name, value]) => [name, mapped(value, change)]))
}

/** Control characters and halves of characters, which nobody can see, are left out. */
const clean = (text: string) => text.toWellFormed().replace(/[^\P{Cc}\n]/gu, ' ')

const number = (character: string) =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`

/** Characters by their numbers, with a space between two of them. */
const byNumber = (characters: ReadonlySet<string>) => (text: string) =>
  [...text]
    .map((one) => (characters.has(one) ? ` ${number(one)} ` : one))
    .join('')
    .replaceAll('  ', ' ')

/**
 * Data as a tagged PDF (PDF/UA-1): the same bytes for the same data, moment and fonts. Any warning is an error.
 * Characters that no font on the machine has are replaced by their numbers and `unprintable` is set in the data.
 * @param at seconds since 1970: the moment that the file says it was made
 */
export function pdfOf(data: object, at: number): Pdf {
  const cleaned = mapped(data, clean)
  const missing = new Set<string>()
  for (let tries = 1; ; tries += 1) {
    const printable = missing.size ? mapped(cleaned, byNumber(missing)) : cleaned
    try {
      return typeset({ ...(printable as object), unprintable: missing.size > 0 }, at)
    } catch (error) {
      if (!(error instanceof Unprintable) || tries === TRIES) throw error
      for (const character of error.characters) missing.add(character)
    }
  }
}
