/** A small clinic for the tests of records, in a folder of its own that is gone afterwards. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { type OpenOptions, openRecords, type Records } from '../../main/records/index.ts'
import { counting, handClock } from './fixtures.ts'

export * from './fixtures.ts'

/** A folder that is gone after the test. */
export function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'evenhand-records-'))
  onTestFinished(() => rmSync(made, { recursive: true, force: true }))
  return made
}

/** Opens records that are closed after the test. */
export function open(at: string, options: Partial<OpenOptions> = {}): Records {
  const records = openRecords({
    folder: at,
    store: 'clinic',
    projector: counting,
    clock: handClock(),
    ...options,
  })
  onTestFinished(() => records.close())
  return records
}
