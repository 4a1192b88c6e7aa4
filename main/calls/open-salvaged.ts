import { Refused } from '../contract/procedure.ts'
import { type OpenOptions, openRecords, type Records, salvage, type SalvageReport } from '../records/index.ts'

export interface OpenedSound {
  readonly records: Records
  /** What became of the file that was there, where it was damaged. */
  readonly salvaged: SalvageReport | null
}

/**
 * Opens records. A file that is damaged is set aside, and what can be read of it is carried over into a new one.
 * @throws Refused `records.…` where they can't be opened, or nothing can be salvaged
 */
export function openSalvaged(options: OpenOptions): OpenedSound {
  try {
    return { records: openRecords(options), salvaged: null }
  } catch (error) {
    if (!(error instanceof Refused) || error.fault.code !== 'records.damaged') throw error
    const salvaged = salvage(options)
    return { records: openRecords(options), salvaged }
  }
}
