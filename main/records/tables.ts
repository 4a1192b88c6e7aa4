/** Writes changes of rows. Table and column names come from our own projections, values are always bound. */
import type { Database, Value } from './database.ts'
import type { Change } from './projection-kind.ts'

export interface Tables {
  apply(changes: readonly Change[]): void
}

interface Statement {
  run(...values: Value[]): unknown
}

const both = (columns: readonly string[], between: string) =>
  columns.map((column) => `${column} = ?`).join(between)

/** The statement for a change; `put` updates in place so that a row keeps its number and what hangs on it. */
function sqlOf(change: Change, key: readonly string[]): string {
  if ('drop' in change) return `DELETE FROM ${change.drop} WHERE ${both(Object.keys(change.where), ' AND ')}`
  if ('set' in change) {
    const where = both(Object.keys(change.where), ' AND ')
    return `UPDATE ${change.set} SET ${both(Object.keys(change.to), ', ')} WHERE ${where}`
  }
  const columns = Object.keys(change.row)
  const rest = columns.filter((column) => !key.includes(column))
  const then = rest.length
    ? `UPDATE SET ${rest.map((column) => `${column} = excluded.${column}`).join(', ')}`
    : 'NOTHING'
  return `INSERT INTO ${change.put} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})
    ON CONFLICT (${key.join(', ')}) DO ${then}`
}

const valuesOf = (change: Change): Value[] => {
  if ('drop' in change) return Object.values(change.where)
  if ('set' in change) return [...Object.values(change.to), ...Object.values(change.where)]
  return Object.values(change.row)
}

const shapeOf = (change: Change): string => {
  if ('drop' in change) return `- ${change.drop} ${Object.keys(change.where)}`
  if ('set' in change) return `~ ${change.set} ${Object.keys(change.to)} ${Object.keys(change.where)}`
  return `+ ${change.put} ${Object.keys(change.row)}`
}

/** The columns that name a row: `id` where a table has one beside a bare row number, else its primary key. */
export function keyOf(database: Database, table: string): readonly string[] {
  const columns = database
    .prepare<[string], { name: string; pk: number }>('SELECT name, pk FROM pragma_table_info(?) ORDER BY pk')
    .all(table)
  if (columns.some((column) => column.name === 'row')) return ['id']
  return columns.filter((column) => column.pk > 0).map((column) => column.name)
}

export function tablesOf(database: Database): Tables {
  const statements = new Map<string, Statement>()
  const keys = new Map<string, readonly string[]>()
  const prepared = (change: Change) => {
    const shape = shapeOf(change)
    const known = statements.get(shape)
    if (known) return known
    const table = 'put' in change ? change.put : ''
    if (table && !keys.has(table)) keys.set(table, keyOf(database, table))
    const made: Statement = database.prepare(sqlOf(change, keys.get(table) ?? []))
    statements.set(shape, made)
    return made
  }
  return {
    apply(changes) {
      for (const change of changes) prepared(change).run(...valuesOf(change))
    },
  }
}
