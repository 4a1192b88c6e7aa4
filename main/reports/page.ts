/** What the template can set: blocks of words that are ready, top to bottom. It knows nothing of tests. */
export interface Column {
  readonly text: string
  /** `wide` columns share the room that the others leave. */
  readonly width: 'narrow' | 'wide'
  readonly figures: boolean
}

export type Block =
  | { readonly block: 'heading'; readonly text: string; readonly hint: string | null }
  /** A heading under the last one. */
  | { readonly block: 'part'; readonly text: string }
  | {
      readonly block: 'table'
      /** Said by screen readers, not printed. */
      readonly caption: string
      readonly columns: readonly Column[]
      readonly rows: readonly (readonly string[])[]
      /** Rows of things that don't count: printed in grey. */
      readonly grey: readonly number[]
      /** The column whose figures are set large; null for none. */
      readonly large: number | null
    }
  | { readonly block: 'lines'; readonly lines: readonly string[]; readonly small: boolean }
  | { readonly block: 'text'; readonly text: string }
  /** Smaller and greyer than a text. */
  | { readonly block: 'note'; readonly text: string }
  /** Two side by side. */
  | {
      readonly block: 'pictures'
      readonly pictures: readonly { readonly svg: string; readonly alt: string }[]
    }
  /** A step of a script, with a box to tick; `texts` with whom they are for, where they are not for all. */
  | {
      readonly block: 'step'
      readonly depth: number
      readonly label: string
      readonly texts: readonly { readonly label: string | null; readonly words: string }[]
      readonly facts: readonly string[]
    }
  /** What is said of the steps after it; `title` is null for what stands between them. */
  | {
      readonly block: 'loop'
      readonly depth: number
      readonly title: string | null
      readonly lines: readonly string[]
    }
  | { readonly block: 'new-page' }
  /** Labels with a line to write on. */
  | { readonly block: 'blanks'; readonly labels: readonly string[] }
  /** A question and what can be ticked. */
  | {
      readonly block: 'ticks'
      readonly rows: readonly { readonly label: string; readonly options: readonly string[] }[]
    }
  /** A grid to write in: columns in groups, such as the hands, each ended by signs to circle. */
  | {
      readonly block: 'cells'
      readonly caption: string
      /** Of the first column. */
      readonly label: string
      /** What the signs in cells mean, a line each. */
      readonly signs: readonly string[]
      readonly groups: readonly { readonly title: string; readonly columns: readonly CellColumn[] }[]
      readonly closings: readonly string[]
      readonly rows: readonly { readonly heading: string | null; readonly label: string }[]
    }
  /** Empty lines to write on. */
  | { readonly block: 'room'; readonly lines: number }

interface CellColumn {
  readonly text: string
  /** Signs to circle; none: a value is written. */
  readonly choices: readonly string[]
}

export interface Page {
  readonly language: string
  readonly title: string
  readonly author: string
  /** Printed on top of every page where this is no record of a client. */
  readonly mark: string | null
  readonly lead: string
  readonly heading: string
  readonly facts: readonly (readonly [string, string])[]
  readonly blocks: readonly Block[]
  readonly made: string
  readonly footer: string
  /** With the numbers left out: `Page {page} of {pages}` in pieces. */
  readonly pageWords: readonly [string, string, string]
  readonly unprintableWords: string
}

export const narrow = (text: string): Column => ({ text, width: 'narrow', figures: false })
export const wide = (text: string): Column => ({ text, width: 'wide', figures: false })
/** Longer than this, a column as wide as its longest text would leave too little to the others. */
const SHORT = 24

/** Narrow where all its texts are short. */
export const fitting = (text: string, cells: readonly string[]): Column =>
  cells.every((cell) => cell.length <= SHORT) ? narrow(text) : wide(text)
export const numeric = (text: string): Column => ({ text, width: 'narrow', figures: true })

export function table(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  look: { readonly grey?: readonly number[]; readonly large?: number } = {},
): Block {
  return { block: 'table', caption, columns, rows, grey: look.grey ?? [], large: look.large ?? null }
}

export const heading = (text: string, hint: string | null = null): Block => ({ block: 'heading', text, hint })
export const part = (text: string): Block => ({ block: 'part', text })
export const lines = (these: readonly string[], small = false): readonly Block[] =>
  these.length ? [{ block: 'lines', lines: these, small }] : []
export const paragraph = (words: string): Block => ({ block: 'text', text: words })
export const note = (text: string): Block => ({ block: 'note', text })
