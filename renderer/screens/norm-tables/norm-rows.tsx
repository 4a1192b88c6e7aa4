import { Table } from '../../parts/table.tsx'
import { say } from '../../words/index.ts'
import type { NormTable } from './index.tsx'

type Row = NormTable['rows'][number]

const BEFORE = ['line', 'sex', 'age', 'hand', 'n'] as const
const NUMBERS: ReadonlySet<string> = new Set(['line', 'n'])
/** Columns that have words; others are shown as their file calls them. */
const WORDED: ReadonlySet<string> = new Set(['mean', 'sd'])

/** The rows as they stand in the file, line numbers included, so that a wrong one is found again. */
export function NormRows({ table }: { readonly table: NormTable }) {
  const own = table.columns.map((id, index) => ({
    id: `cell-${id}`,
    title: WORDED.has(id) ? say(`norm_tables.row.${id === 'sd' ? 'sd' : 'mean'}`) : id,
    isNumber: table.rows.every(({ cells }) => typeof cells[index] !== 'string'),
  }))
  return (
    <Table
      caption={table.title}
      columns={[
        ...BEFORE.map((id) => ({ id, title: say(`norm_tables.row.${id}`), isNumber: NUMBERS.has(id) })),
        ...own,
        { id: 'from', title: say('norm_tables.row.from'), isNumber: false },
      ]}
      rows={table.rows.map((row) => ({
        id: String(row.line),
        cells: [
          row.line,
          say(`norm_tables.sex.${row.sex}`),
          ageOf(row),
          say(`norm_tables.hand.${row.hand}`),
          row.n,
          ...row.cells,
          say(`norm_tables.from.${row.provenance}`),
        ],
      }))}
    />
  )
}

/** Completed years, both ends included, as the table counts them. */
function ageOf({ ageMin, ageMax }: Row): string {
  if (ageMin !== null && ageMax !== null)
    return say('norm_tables.age.range', { from: String(ageMin), to: String(ageMax) })
  if (ageMin !== null) return say('norm_tables.age.from', { from: String(ageMin) })
  if (ageMax !== null) return say('norm_tables.age.to', { to: String(ageMax) })
  return say('norm_tables.age.any')
}
