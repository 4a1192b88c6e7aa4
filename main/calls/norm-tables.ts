/** A protocol's norm tables as a person compares them with their source: every row, and who has done so. */
import type { z } from 'zod'
import type { Norm, NormCell, NormRow, Protocol, Text } from '../../protocols/language/model.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import type { normTable } from '../contract/shapes.ts'
import type { Records } from '../records/index.ts'
import type { Shelved } from './shelf.ts'
import { verifiedNorms } from './verified-norms.ts'

type Sound = Shelved & { readonly protocol: Protocol }

export function normTablesOf(records: Records, shelved: Sound): z.infer<typeof normTable>[] {
  const { protocol } = shelved
  const wording = wordingFor(protocol, null)
  const say = (text: Text) => textOf(protocol, wording, text)
  const marks = verifiedNorms(records, shelved)
  return protocol.norms.map((norm) => ({
    norm: norm.name,
    title: say(norm.title),
    population: say(norm.population),
    score: scoreTitle(protocol, norm, say),
    unit: norm.unit,
    file: norm.file,
    source: sourceOf(protocol, norm),
    ...rowsOf(norm, say),
    verified: marks.get(norm.name) ?? null,
  }))
}

type Cell = number | string | null

/** The rows as they stand in the file, the words of bands in place of their names. */
function rowsOf(norm: Norm, say: (text: Text) => string) {
  const ranks = new Set(norm.rows.flatMap(({ percentiles }) => percentiles.map(({ rank }) => rank)))
  const figures = { ...FIGURES[norm.as](norm, say), ...(norm.as === 'percentiles' && percentileCells(ranks)) }
  const columns = [...norm.columns.map(({ column }) => column), ...Object.keys(figures)]
  const rows = norm.rows.map((row) => {
    const { line, sex, ageMin, ageMax, hand, n, provenance } = row
    const chosen = norm.columns.map(({ column }) => cellText(row.chosenBy[column]))
    const cells = [...chosen, ...Object.values(figures).map((read) => read(row))]
    return { line, sex, ageMin, ageMax, hand, n, cells, provenance }
  })
  return { columns, rows }
}

type Cells = Readonly<Record<string, (row: NormRow) => Cell>>

const FIGURES: Readonly<Record<Norm['as'], (norm: Norm, say: (text: Text) => string) => Cells>> = {
  'mean-sd': () => ({ mean: ({ mean }) => mean, sd: ({ sd }) => sd }),
  percentiles: () => ({}),
  lms: () => ({
    l: ({ lms }) => lms?.l ?? null,
    m: ({ lms }) => lms?.m ?? null,
    s: ({ lms }) => lms?.s ?? null,
  }),
  'cut-offs': (norm, say) => ({
    cut: ({ cutOff }) => cutOff?.value ?? null,
    below: ({ cutOff }) => bandText(norm, say, cutOff?.below),
    above: ({ cutOff }) => bandText(norm, say, cutOff?.above),
    equal: ({ cutOff }) => cutOff?.equal ?? null,
  }),
  bands: (norm, say) => ({
    from: ({ band }) => band?.from ?? null,
    below: ({ band }) => band?.below ?? null,
    band: ({ band }) => bandText(norm, say, band?.id),
  }),
}

const atRank = (rank: number) => (row: NormRow) =>
  row.percentiles.find((one) => one.rank === rank)?.value ?? null

function percentileCells(ranks: ReadonlySet<number>): Cells {
  const rising = [...ranks].toSorted((a, b) => a - b)
  return Object.fromEntries(rising.map((rank) => [`p${rank}`, atRank(rank)]))
}

function bandText({ bands }: Norm, say: (text: Text) => string, id: string | undefined): Cell {
  const words = id === undefined ? undefined : bands[id]
  return words ? say(words) : (id ?? null)
}

function cellText(cell: NormCell | undefined): Cell {
  if (!cell) return null
  if (cell.is === 'word') return cell.word
  return cell.from === cell.to ? cell.from : `${cell.from ?? ''}..${cell.to ?? ''}`
}

function scoreTitle(protocol: Protocol, norm: Norm, say: (text: Text) => string): string {
  const score = protocol.scores.find(({ name }) => name === norm.of)
  return score ? say(score.title) : norm.of
}

function sourceOf(protocol: Protocol, norm: Norm): { cite: string; note: string } {
  const source = protocol.sources.find(({ id }) => id === norm.source)
  return { cite: source?.cite ?? norm.source, note: source?.note ?? '' }
}
