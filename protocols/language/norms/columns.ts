/** The columns that a norm table may have, by what its rows state: how each cell is read, and what belongs in it. */
import { CLIENT_COLUMNS, type NormCell, type NormColumn, type NormKind } from '../model.ts'

export interface Column {
  /** What belongs in a cell, in a phrase that follows "Write". */
  readonly form: string
  /** Whether the header must have it. */
  readonly isNeeded: boolean
  /** The cell's value, null where it is empty and may be; undefined where the text has not the form. */
  read(text: string): unknown
}

/** Names of columns that choose a row, by what they are named as. */
export type Choosers = ReadonlyMap<string, NormColumn['by']>

const word = (words: readonly string[], isNeeded: boolean, form: string): Column => ({
  form,
  isNeeded,
  read: (text) => words.find((one) => one === text),
})

const number = (pattern: RegExp, isNeeded: boolean, form: string): Column => ({
  form,
  isNeeded,
  read: (text) => (text === '' ? null : pattern.test(text) ? Number(text) : undefined),
})

const YEARS = /^\d{1,3}$/
const POSITIVE = /^\d{1,9}(\.\d{1,9})?$/
const SIGNED = /^-?\d{1,9}(\.\d{1,9})?$/
const VALUE = 'a number with a point before decimals, or nothing'
const BAND = /^[a-z][a-z0-9_]*$/

const band: Column = {
  form: 'the name of one of the norm’s bands',
  isNeeded: true,
  read: (text) => (text === '' ? null : BAND.test(text) ? text : undefined),
}

const value = (isNeeded: boolean): Column => number(SIGNED, isNeeded, VALUE)

/** Whom a row is for. Cut-offs and bands mostly hold for everybody: their tables may leave these out. */
function strata(isNeeded: boolean): Readonly<Record<string, Column>> {
  return {
    sex: word(['F', 'M', 'any'], isNeeded, 'F, M or any'),
    age_min: number(YEARS, isNeeded, 'whole years, or nothing'),
    age_max: number(YEARS, isNeeded, 'whole years, or nothing'),
    hand: word(
      ['right', 'left', 'dominant', 'nondominant', 'any'],
      isNeeded,
      'right, left, dominant, nondominant or any',
    ),
    n: number(/^[1-9]\d{0,8}$/, isNeeded, 'a whole number from 1, or nothing'),
  }
}

const FIGURES: Readonly<Record<NormKind, Readonly<Record<string, Column>>>> = {
  'mean-sd': {
    mean: number(SIGNED, true, 'a number with a point before decimals'),
    sd: number(POSITIVE, true, VALUE),
  },
  percentiles: {},
  lms: { l: value(true), m: value(true), s: value(true) },
  'cut-offs': {
    cut: value(true),
    below: band,
    above: band,
    equal: word(['below', 'above'], true, 'below or above: the side that the value itself belongs to'),
  },
  bands: { from: value(true), below: value(true), band },
}

/** A column of percentiles, such as `p5` or `p2.5`: its rank, or null where the name is none. */
export function rankOf(column: string): number | null {
  const rank = Number(/^p(\d{1,2}(?:\.\d{1,3})?)$/.exec(column)?.[1] ?? 0)
  return rank > 0 ? rank : null
}

/** All columns by name; `inHeader` are the names that the table has. */
export function columnsOf(
  kind: NormKind,
  choosers: Choosers,
  inHeader: readonly string[],
): ReadonlyMap<string, Column> {
  const ranks = kind === 'percentiles' ? inHeader.filter((name) => rankOf(name) !== null) : []
  const own = {
    ...strata(kind !== 'cut-offs' && kind !== 'bands'),
    ...Object.fromEntries(ranks.map((name) => [name, value(false)])),
    ...FIGURES[kind],
    provenance: word(['seen', 'memory'], true, 'seen or memory'),
  }
  const choosing = [...choosers].filter(([name]) => !Object.hasOwn(own, name))
  return new Map([
    ...Object.entries(own),
    ...choosing.map(([name, by]) => [name, choosingColumn(name, by)] as const),
  ])
}

const ARMS = ['affected', 'less_affected', 'unaffected']
const SIDES = ['right', 'left', 'both', 'neither']
const RANGE = /^(\d{1,9}(?:\.\d{1,9})?)?\.\.(\d{1,9}(?:\.\d{1,9})?)?$/
const RANGE_FORM = 'a number, a range such as 0..8 or 13.., or nothing'

/** A column that chooses the row. An empty cell, or `any`, fits everybody. */
function choosingColumn(name: string, by: NormColumn['by']): Column {
  if (by === 'client' && name === CLIENT_COLUMNS[0]) {
    return { form: RANGE_FORM, isNeeded: false, read: (text) => anyOr(text, rangeCell) }
  }
  if (by === 'client') {
    const words = name === CLIENT_COLUMNS[1] ? SIDES : ARMS
    const read = (text: string): NormCell | undefined =>
      words.includes(text) ? { is: 'word', word: text } : undefined
    return { form: `${words.join(', ')} or nothing`, isNeeded: false, read: (text) => anyOr(text, read) }
  }
  // What a condition was is recorded as written, a bare number too.
  const read = (text: string): NormCell =>
    (by === 'condition' ? null : rangeCell(text)) ?? { is: 'word', word: text }
  return { form: 'what can be recorded there', isNeeded: false, read: (text) => anyOr(text, read) }
}

function anyOr(text: string, read: (text: string) => NormCell | undefined): NormCell | null | undefined {
  return text === '' || text === 'any' ? null : read(text)
}

function rangeCell(text: string): NormCell | undefined {
  if (POSITIVE.test(text)) return { is: 'range', from: Number(text), to: Number(text) }
  const [, from, to] = RANGE.exec(text) ?? []
  if (from === undefined && to === undefined) return undefined
  return { is: 'range', from: numberOr(from), to: numberOr(to) }
}

const numberOr = (text: string | undefined): number | null => (text === undefined ? null : Number(text))
