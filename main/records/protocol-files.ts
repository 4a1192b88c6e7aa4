import type { Database } from './database.ts'

/** The files of a kept protocol by its hash; null where it isn't kept. */
export function protocolFilesOf(database: Database): (hash: string) => ReadonlyMap<string, string> | null {
  const files = database.prepare<[string], { path: string; text: string }>(
    'SELECT path, text FROM protocol_file WHERE hash = ? ORDER BY path',
  )
  return (hash) => {
    const rows = files.all(hash)
    return rows.length ? new Map(rows.map((row) => [row.path, row.text])) : null
  }
}
