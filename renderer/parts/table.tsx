import { type ReactNode, useEffect, useRef } from 'react'
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

/** A table wider than its box is scrolled by key, so the box takes the focus then, and only then. */
function focusableWhileScrolling(box: HTMLElement): () => void {
  const look = () => {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0
    else box.removeAttribute('tabindex')
  }
  const observer = new ResizeObserver(look)
  observer.observe(box)
  look()
  return () => observer.disconnect()
}

export function Table({ caption, isCaptionSeen = false, columns, rows }: TableProps) {
  const look = (index: number) => (columns[index]?.isNumber ? 'table-number' : 'table-text')
  const box = useRef<HTMLElement>(null)
  useEffect(() => (box.current ? focusableWhileScrolling(box.current) : undefined), [])
  return (
    <section className="table-box" aria-label={caption} ref={box}>
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
    </section>
  )
}
