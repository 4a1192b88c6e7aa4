import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { default as Sqlite } from 'better-sqlite3'
import { expect, onTestFinished, test, vi } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { begin, addUser, folder, give, kindsOf, open, quietly, tap } from './clinic.ts'
import { faultOf } from './fault.ts'

/** A disk that can be filled and freed, with records on it. */
interface Disk {
  readonly at: string
  fill(): void
  free(): void
}

/** A real small disk in memory; null where this machine or user can't mount one. */
function smallDisk(): Disk | null {
  const at = folder()
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', at])
  if (mounted.status !== 0) return null
  onTestFinished(() => {
    spawnSync('umount', ['-l', at])
  })
  const ballast = join(at, 'ballast')
  const within = join(at, 'records')
  mkdirSync(within)
  return {
    at: within,
    fill() {
      for (let size = 1 << 20; size >= 1; size >>= 1) {
        try {
          for (;;) writeFileSync(`${ballast}-${size}-${readdirSync(at).length}`, Buffer.alloc(size))
        } catch {
          // Full for pieces of this size; smaller ones may still fit.
        }
      }
    },
    free() {
      for (const name of readdirSync(at)) if (name.startsWith('ballast')) rmSync(join(at, name))
    },
  }
}

/** SQLite itself made to refuse further pages, as it does on a full disk: where no small disk can be mounted. */
function limitedFile(): Disk {
  const keyed = vi.spyOn(Sqlite.prototype, 'key')
  onTestFinished(() => keyed.mockRestore())
  const limit = (pages: number) => {
    const database = keyed.mock.contexts.at(-1) as Sqlite.Database
    database.pragma(`max_page_count = ${pages}`)
  }
  return { at: folder(), fill: () => limit(1), free: () => limit(1_000_000) }
}

const big: EventBody = { kind: 'noted', text: 'x'.repeat(5000) }

test.each([
  ['SQLite may have no further page', limitedFile],
  ['the disk is full', () => smallDisk() ?? limitedFile()],
])(
  'when %s in mid-test nothing is half kept, and the same events are kept once there is room',
  async (_, make) => {
    const disk = make()
    const records = open(disk.at)
    const user = addUser(records, 'Ada')
    const id = begin(records, user, null)
    const stream = { kind: 'administration', id } as const
    disk.fill()
    const held = [records.stamp(stream, [tap(1)], user)]
    let refused: unknown = null
    for (let tries = 0; tries < 400 && !refused; tries += 1) {
      try {
        records.keep(held.flat())
        held.push(records.stamp(stream, [tap(held.length), big], user))
      } catch (error) {
        refused = error
      }
    }
    expect(faultOf(() => records.keep(held.flat()))).toMatchObject({
      code: 'records.disk-refused',
      detail: { cause: expect.stringMatching(/^SQLITE_(FULL|IOERR)/) },
    })
    const before = records.administration(id)
    const row = records.read.administration(id)
    expect(faultOf(() => give(records, id, [big, big, big], user)).code).toBe('records.disk-refused')
    expect(records.administration(id)).toEqual(before)
    expect(records.read.administration(id)).toEqual(row)

    disk.free()
    const kept = records.keep(held.flat())
    records.keep(held.flat())
    expect(
      records
        .administration(id)
        .slice(2)
        .map((event) => event.id),
    ).toEqual(kept.map((entry) => entry.id))
    expect(kindsOf(records.administration(id)).slice(0, 3)).toEqual(['opened', 'assigned', 'tapped.tap'])
    expect((await records.verify(quietly)).problems).toEqual([])
    records.close()
    expect(open(disk.at).administration(id)).toHaveLength(2 + kept.length)
  },
)
