/**
 * Writing what has been decided. While the disk refuses, it is held in memory in its order and tried again until
 * it is kept; open screens are told of both.
 */
import { Refused } from '../contract/procedure.ts'
import type { Push } from '../contract/pushes.ts'
import type { Records, Stamped } from '../records/index.ts'

/** The store of the clinic's records, and the one of what is given without a client. */
export type Store = 'records' | 'rehearsal'
export type Stores = Readonly<Record<Store, Records>>

/** Something with events that may not all be on disk yet. */
export interface Keepable {
  readonly store: Store
  readonly id: string
  /** Decided and shown, and not on disk: oldest first. */
  unsaved: readonly Stamped[]
}

/** ms between two tries to write what the disk refused. */
const AGAIN = 1000
/** The codes by which the records say that the disk is at fault and the same may be tried again. */
const DISK_AT_FAULT: readonly string[] = ['records.disk-refused', 'records.busy']

export class Keeping {
  readonly #stores: Stores
  readonly #push: (push: Push) => void
  readonly #waiting = new Set<Keepable>()
  #timer: NodeJS.Timeout | null = null

  constructor(stores: Stores, push: (push: Push) => void) {
    this.#stores = stores
    this.#push = push
  }

  /**
   * Writes events after those that wait.
   * @param mayWait whether they may be held in memory; else the disk's refusal is thrown and nothing is held
   * @throws Refused `records.…`
   */
  keep(one: Keepable, stamped: readonly Stamped[], mayWait: boolean): void {
    const all = [...one.unsaved, ...stamped]
    try {
      this.#stores[one.store].keep(all)
      one.unsaved = []
      this.#waiting.delete(one)
    } catch (error) {
      const canWait = error instanceof Refused && DISK_AT_FAULT.includes(error.fault.code)
      if (!canWait || !mayWait) throw error
      one.unsaved = all
      this.#waiting.add(one)
      this.#tryLater()
    }
  }

  /** @throws Refused `not_saved` while anything of it is only in memory */
  checkSaved(one: Keepable): void {
    if (one.unsaved.length) this.#flush(one)
    if (one.unsaved.length) throw new Refused('not_saved')
  }

  /** Tries once more to write everything that waits, then stops trying. */
  close(): void {
    if (this.#timer) clearTimeout(this.#timer)
    for (const one of this.#waiting) this.keep(one, [], false)
  }

  #flush(one: Keepable): void {
    this.keep(one, [], true)
    if (!one.unsaved.length) this.tell(one)
  }

  /** Tells every open screen that something was written, or held. */
  tell({ store, id, unsaved }: Keepable): void {
    this.#push({ push: 'administration', store, id, saved: unsaved.length === 0 })
  }

  #tryLater(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = null
      for (const one of this.#waiting) {
        try {
          this.#flush(one)
        } catch {
          // Whatever it is, it stays unsaved and said so; the next act meets the same error and answers with it.
          this.#tryLater()
        }
      }
    }, AGAIN)
    this.#timer.unref()
  }
}
