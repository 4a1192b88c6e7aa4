import type { ReactNode } from 'react'
import './table.css'

export interface Column {
  readonly id: string
  readonly title: string
  /** Numbers stand right-aligned in figures of one width. */
  readonly isNumber?: boolean
}

export interface TableRow {
  readonly id: string
  /** One cell a column, in their order; the first heads the row. */
  readonly cells: readonly ReactNode[]
}

export interface TableProps {
  readonly caption: string
  readonly isCaptionSeen?: boolean
  readonly columns: readonly Column[]
  readonly rows: readonly TableRow[]
}

export function Table({ caption, isCaptionSeen = false, columns, rows }: TableProps) {
  const look = (index: number) => (columns[index]?.isNumber ? 'table-number' : 'table-text')
  return (
    <div className="table-box">
      <table className="table">
        <caption className={isCaptionSeen ? 'table-caption' : 'unseen'}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column, index) => (
              <th key={column.id} scope="col" className={look(index)}>
                {column.title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              {row.cells.map((cell, index) =>
                index === 0 ? (
                  <th key={columns[index]?.id ?? index} scope="row" className={look(index)}>
                    {cell}
                  </th>
                ) : (
                  <td key={columns[index]?.id ?? index} className={look(index)}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
