import { type ReactNode, useEffect, useRef } from 'react'
import { say } from '../words/index.ts'
import './table.css'

interface Column {
  readonly id: string
  readonly title: string
  /** Numbers stand right-aligned in figures of one width. */
  readonly isNumber?: boolean
}

interface TableRow {
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

/** A table wider than its box is scrolled by key, so the box then has a name and takes the focus, only then. */
function focusableWhileScrolling(box: HTMLElement, caption: string): () => void {
  const look = () => {
    const scrolls = box.scrollWidth > box.clientWidth
    box.toggleAttribute('tabindex', scrolls)
    box.toggleAttribute('aria-label', scrolls)
    if (!scrolls) return
    box.tabIndex = 0
    box.ariaLabel = say('parts.table.wide', { caption })
  }
  const observer = new ResizeObserver(look)
  observer.observe(box)
  look()
  return () => observer.disconnect()
}

export function Table({ caption, isCaptionSeen = false, columns, rows }: TableProps) {
  const look = (index: number) => (columns[index]?.isNumber ? 'table-number' : 'table-text')
  const box = useRef<HTMLElement>(null)
  useEffect(() => (box.current ? focusableWhileScrolling(box.current, caption) : undefined), [caption])
  return (
    <section className="table-box" ref={box}>
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
