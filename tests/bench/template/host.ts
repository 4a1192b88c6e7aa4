/** The bare template's host: the same stack (encrypted SQLite, loopback, checked calls) and no program in it. */
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { extname, join } from 'node:path'
import { default as Sqlite } from 'better-sqlite3'
import { z } from 'zod'

z.config({ jitless: true })
const answer = z.strictObject({ count: z.int() })
const [, , folder = '.', pages = '.'] = process.argv

const database = new Sqlite(join(folder, 'template.db'))
// A key of its own kind costs what ours costs: raw bytes, no derivation.
database.key(Buffer.from(`raw:${'5a'.repeat(32)}`))
database.pragma('journal_mode = WAL')
database.pragma('synchronous = FULL')
database.exec('CREATE TABLE IF NOT EXISTS press (id INTEGER PRIMARY KEY)')
const add = database.prepare('INSERT INTO press DEFAULT VALUES')
const read = database.prepare('SELECT count(*) AS count FROM press')

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
}

// A page with the finest clock there is has to be isolated, whatever else is on it.
const ISOLATED = {
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
}

const server = createServer((request, response) => {
  for (const [name, value] of Object.entries(ISOLATED)) response.setHeader(name, value)
  const { pathname } = new URL(request.url ?? '/', 'http://127.0.0.1')
  if (pathname.startsWith('/call/')) {
    if (pathname === '/call/add') add.run()
    response.setHeader('content-type', 'application/json')
    response.end(JSON.stringify(answer.parse(read.get())))
    return
  }
  const file = pathname === '/' ? 'index.html' : pathname.slice(1)
  response.setHeader('content-type', TYPES[extname(file)] ?? 'application/octet-stream')
  response.end(readFileSync(join(pages, file)))
})
server.listen(0, '127.0.0.1', () => {
  const address = server.address()
  if (address !== null && typeof address === 'object') console.log(`http://127.0.0.1:${address.port}/`)
})
process.on('SIGTERM', () => process.exit(0))
