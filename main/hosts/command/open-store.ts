/** Records for a command to read: those of a host, opened only where there are some. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { rehearsalFolder } from '../../calls/clinic.ts'
import { projector } from '../../calls/projector.ts'
import { openRecords, type Records, type StoreKind, systemClock } from '../../records/index.ts'
import { recordsFolder } from '../folders.ts'
import { HostProblem } from '../problem.ts'
import type { Given, Option } from './command.ts'
import { userPath } from './find-protocol.ts'

/** The options of every command that reads records. */
export const STORE_OPTIONS: Readonly<Record<string, Option>> = {
  records: { type: 'string', value: 'PATH' },
  demo: { type: 'boolean' },
}

/** Every folder of records has this file, whatever else a folder holds. */
const MARK = 'keys.json'

export interface OpenedStore {
  readonly store: StoreKind
  readonly folder: string
  readonly records: Records
}

/**
 * Gives a command the records and the rehearsals, and closes them after it.
 * @throws HostProblem where there are none; Refused where they can't be opened
 */
export async function withStores<T>(
  given: Given,
  use: (stores: readonly OpenedStore[]) => T | Promise<T>,
  { examines }: { readonly examines: boolean } = { examines: false },
): Promise<T> {
  const asked = given.text('records')
  const demo = given.flag('demo')
  const folder = recordsFolder(asked === null ? null : userPath(asked), demo)
  const wanted: readonly Omit<OpenedStore, 'records'>[] = [
    { store: demo ? 'demo' : 'clinic', folder },
    { store: 'rehearsal', folder: rehearsalFolder(folder) },
  ]
  const there = wanted.filter((one) => existsSync(join(one.folder, MARK)))
  if (!there.length) throw new HostProblem('command.no_records', { folder })
  const opened: OpenedStore[] = []
  try {
    for (const one of there)
      opened.push({ ...one, records: openRecords({ ...one, projector, clock: systemClock, examines }) })
    return await use(opened)
  } finally {
    for (const { records } of opened) records.close()
  }
}
