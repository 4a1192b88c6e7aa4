/** A log of very many events, measured against what the same disk and library do by themselves. */
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { openDatabase } from '../../main/records/database.ts'
import type { Records } from '../../main/records/index.ts'
import type { EventRow } from '../../main/records/log.ts'
import { addUser, begin, folder, give, open, quietly, tap } from './clinic.ts'
import { raw } from './raw-file.ts'

/** Events of one administration, before another one is begun. */
const PER_ADMINISTRATION = 200
const PAIRS = 200
const STARTS = 15

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0

function timed(act: () => void): number {
  const began = performance.now()
  act()
  return performance.now() - began
}

/** One append against a bare transaction of one row of as many bytes, turn about: the ratio of the medians. */
function appendRatio(records: Records, user: string): number {
  const bare = openDatabase(join(folder(), 'bare.db'), Buffer.alloc(32, 1))
  bare.exec('CREATE TABLE row (id INTEGER PRIMARY KEY, bytes BLOB)')
  const insert = bare.prepare('INSERT INTO row (bytes) VALUES (?)')
  const bytes = Buffer.alloc(500)
  const id = begin(records, user, null)
  const pairs = Array.from({ length: PAIRS }, (_, index) => [
    timed(() => give(records, id, [tap(index)], user)),
    timed(() => insert.run(bytes)),
  ])
  bare.close()
  return median(pairs.map(([append = 0]) => append)) / median(pairs.map(([, plain = 0]) => plain))
}

/** Reads all rows in pieces, as verifying does, and hashes their bytes once. */
function hashedOnce(at: string): void {
  raw(at, (database) => {
    const piece = database.prepare<[string, number], EventRow>(
      'SELECT * FROM event WHERE (device, sequence) > (?, ?) ORDER BY device, sequence LIMIT 500',
    )
    const hash = createHash('sha256')
    let [device, sequence] = ['', 0]
    for (let rows = piece.all(device, sequence); rows.length > 0; rows = piece.all(device, sequence)) {
      for (const row of rows) {
        for (const value of Object.values(row)) {
          hash.update(value instanceof Uint8Array ? value : String(value))
        }
        ;({ device, sequence } = row)
      }
    }
  })
}

/** Opening one folder against opening another, turn about: the ratio of the medians. */
function startRatio(at: string, other: string): number {
  const pairs = Array.from({ length: STARTS }, () => [at, other].map((one) => timed(() => open(one).close())))
  return median(pairs.map(([first = 0]) => first)) / median(pairs.map(([, second = 0]) => second))
}

/** Fills a log and measures. Each figure is a ratio of two times of this run. */
export async function manyEvents(count: number) {
  const at = folder()
  const records = open(at)
  const user = addUser(records, 'Ada')
  const first = appendRatio(records, user)
  for (let done = 0; done < count; done += PER_ADMINISTRATION) {
    const id = begin(records, user, null)
    const taps = Array.from({ length: PER_ADMINISTRATION - 2 }, (_, index) => tap(index))
    give(records, id, taps, user)
  }
  const last = appendRatio(records, user)
  records.close()
  const empty = folder()
  open(empty).close()
  const start = startRatio(at, empty)
  const plain = timed(() => hashedOnce(at))
  const again = open(at)
  const began = performance.now()
  const { events, problems } = await again.verify(quietly)
  const verify = (performance.now() - began) / plain
  again.close()
  return { events, problems, append: last / first, appendAgainstBare: last, start, verify }
}
