import type { Database } from './database.ts'
import type { ClientRow, Reads, VisitRow } from './rows.ts'
import { folded } from './search-text.ts'

type ClientReads = Pick<Reads, 'client' | 'searchClients' | 'visit' | 'openVisits'>

/** Letters or digits that have to be typed before anybody is listed. */
const LEAST = 3

interface Line {
  readonly id: string
  readonly profile: string
}

const clientOf = (line: Line): ClientRow => ({ id: line.id, profile: JSON.parse(line.profile) })

/** A word as a full-text string: quoted, so that nothing in it is an operator. */
const quoted = (word: string) => `"${word.replaceAll('"', '""')}"`

/** A word as a pattern found anywhere, its wildcards taken literally. */
const anywhere = (word: string) => `%${word.replace(/[\\%_]/g, '\\$&')}%`

/**
 * The statement for a search: words of three characters and more go through the index, shorter ones are looked
 * for in what it finds.
 */
function searchFor(words: readonly string[]): { sql: string; values: string[] } {
  const indexed = words.filter((word) => [...word].length >= 3)
  const scanned = words.filter((word) => [...word].length < 3)
  const from = indexed.length ? 'client_search JOIN client ON client.row = client_search.rowid' : 'client'
  const where = [
    ...(indexed.length ? ['client_search MATCH ?'] : []),
    ...scanned.map(() => `client.search LIKE ? ESCAPE '\\'`),
  ]
  return {
    sql: `SELECT client.id, client.profile FROM ${from} WHERE ${where.join(' AND ')}
      ORDER BY client.search, client.id LIMIT ?`,
    values: [...(indexed.length ? [indexed.map(quoted).join(' AND ')] : []), ...scanned.map(anywhere)],
  }
}

export function readClients(database: Database): ClientReads {
  const client = database.prepare<[string], Line>('SELECT id, profile FROM client WHERE id = ?')
  const visits = 'SELECT id, client, user, opened_at AS openedAt, closed_at AS closedAt FROM visit'
  const visit = database.prepare<[string], VisitRow>(`${visits} WHERE id = ?`)
  const open = database.prepare<[], VisitRow>(`${visits} WHERE closed_at IS NULL ORDER BY opened_at, id`)
  return {
    client(id) {
      const line = client.get(id)
      return line ? clientOf(line) : null
    },
    searchClients(text, limit) {
      const asked = folded(text)
      if ((asked.match(/[\p{L}\p{N}]/gu) ?? []).length < LEAST)
        return { enough: false, found: [], more: false }
      const { sql, values } = searchFor(asked.split(' '))
      const lines = database.prepare<unknown[], Line>(sql).all(...values, limit + 1)
      return {
        enough: true,
        found: lines.slice(0, limit).map(clientOf),
        more: lines.length > limit,
      }
    },
    visit: (id) => visit.get(id) ?? null,
    openVisits: () => open.all(),
  }
}
