/**
 * What the records need beside being written to: a full check after the program was cut short, a backup a day and
 * after each visit, and an eye on the room that is left. All of it goes on in the background and stops nothing.
 */
import { statfsSync } from 'node:fs'
import { join } from 'node:path'
import { backupsIn, type Records, type SalvageReport } from '../records/index.ts'

/** Codes that the first screen has words for. */
type UpkeepNotice = 'disk_low' | 'salvaged' | 'damage_found' | 'backup_failed' | 'backup_old'

interface UpkeepParts {
  readonly folder: string
  readonly records: Records
  readonly salvaged: SalvageReport | null
  /** Told when a notice has come or gone. */
  changed(): void
}

/** ms after the start, so that it doesn't stand in the way of the first screen. */
const AFTER_START = 5000
/** A visit takes far less; below it a disk is likely to be full by the end of a day. */
const LOW_BYTES = 200 * 1024 * 1024
const OLD_MS = 7 * 86_400_000

export const backupFolder = (folder: string): string => join(folder, 'backups')

export class Upkeep {
  readonly #parts: UpkeepParts
  readonly #timer: NodeJS.Timeout
  readonly #stop = new AbortController()
  #isDamaged = false
  #hasFailed = false
  #isAtWork = false

  constructor(parts: UpkeepParts) {
    this.#parts = parts
    this.#timer = setTimeout(() => void this.#afterStart(), AFTER_START)
    this.#timer.unref()
  }

  notices(): UpkeepNotice[] {
    const { folder, records, salvaged } = this.#parts
    const [newest] = backupsIn(backupFolder(folder))
    const isOld = newest !== undefined && Date.parse(records.now()) - Date.parse(newest.at) > OLD_MS
    return [
      ...(isLow(folder) ? (['disk_low'] as const) : []),
      ...(salvaged && (salvaged.lost > 0 || salvaged.altered > 0) ? (['salvaged'] as const) : []),
      ...(this.#isDamaged ? (['damage_found'] as const) : []),
      ...(this.#hasFailed ? (['backup_failed'] as const) : []),
      ...(isOld ? (['backup_old'] as const) : []),
    ]
  }

  /** Makes a backup in the background; one that is being made already is enough. */
  async backUp(): Promise<void> {
    if (this.#isAtWork || this.#stop.signal.aborted) return
    this.#isAtWork = true
    const { folder, records, changed } = this.#parts
    try {
      await records.backUp(backupFolder(folder))
      this.#hasFailed = false
    } catch {
      // Whatever it is: the records are as they were, and the notice says that no backup could be made.
      this.#hasFailed = true
    }
    this.#isAtWork = false
    if (!this.#stop.signal.aborted) changed()
  }

  close(): void {
    clearTimeout(this.#timer)
    this.#stop.abort()
  }

  async #afterStart(): Promise<void> {
    const { folder, records, changed } = this.#parts
    if (records.cutShort) {
      try {
        const { problems } = await records.verify({ progress: () => {}, signal: this.#stop.signal })
        this.#isDamaged = problems.some(({ code }) => code !== 'unknown')
      } catch {
        // Stopped, as the program is ending: the next start finds it cut short no more, and a check can be asked for.
        return
      }
      if (this.#isDamaged) changed()
    }
    const [newest] = backupsIn(backupFolder(folder))
    if (newest?.at.slice(0, 10) !== records.now().slice(0, 10)) await this.backUp()
  }
}

/** False where the system doesn't tell. */
function isLow(folder: string): boolean {
  try {
    const { bavail, bsize } = statfsSync(folder)
    return bavail * bsize < LOW_BYTES
  } catch {
    return false
  }
}
