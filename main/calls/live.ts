/**
 * Administrations in hand. Every act is decided by the runner, written durably, and only then answered. When the
 * disk refuses in the middle of a test, it goes on in memory: every answer says that it is not saved, and nothing
 * is finished before it is.
 */
import type { EventBody } from '../../protocols/runner/events.ts'
import type { Administration } from '../../protocols/runner/index.ts'
import { refuse } from '../../protocols/runner/refuse.ts'
import type { AdministrationView, Refusal } from '../../protocols/runner/view.ts'
import { Refused } from '../contract/procedure.ts'
import type { Push } from '../contract/pushes.ts'
import type { Stamped, Stream } from '../records/index.ts'
import { type Kept, keptProtocol } from './kept.ts'
import { Keeping, type Keepable, type Store, type Stores } from './keeping.ts'

export interface Saved {
  readonly view: AdministrationView
  readonly saved: boolean
}
export type Acted =
  | (Saved & { readonly taken: true })
  | (Saved & { readonly taken: false; readonly refusal: Refusal })

/** An administration with the protocol it was given by. */
export interface InHand {
  readonly store: Store
  readonly id: string
  readonly kept: Kept
  readonly administration: Administration
}

interface Held extends InHand, Keepable {
  readonly store: Store
  readonly id: string
  administration: Administration
  /** True once a screen has it: one that this process has only read was cut by whatever ended the last. */
  isOpen: boolean
}

type Assigned = Extract<EventBody, { kind: 'assigned' }>

interface Parts {
  readonly stores: Stores
  push(push: Push): void
  /** A number from 0 up to 1 that nobody can foresee. */
  random(): number
}

/** More than a desk has open at once. */
const MOST_IN_HAND = 16
/** Acts after which somebody relies on what is on record. */
const ENDS: ReadonlySet<string> = new Set(['finished', 'withdrawn', 'noted', 'rating_ended'])
/** Events that say whose and what it is: not for screens to make. */
const HOST_ONLY: ReadonlySet<string> = new Set(['opened', 'assigned'])

/** The rule by which orders of earlier clients count. */
const BALANCED = 'balanced'

const streamOf = (id: string): Stream => ({ kind: 'administration', id })

export class Live {
  readonly #stores: Stores
  readonly #random: () => number
  readonly #keeping: Keeping
  readonly #inHand = new Map<string, Held>()

  constructor({ stores, push, random }: Parts) {
    this.#stores = stores
    this.#random = random
    this.#keeping = new Keeping(stores, push)
  }

  /**
   * Starts an administration: its first events are on disk, or nothing is.
   * @returns its id
   */
  begin(store: Store, kept: Kept, bodies: readonly EventBody[], user: string): string {
    const id = this.#stores[store].newId()
    const one: Held = { store, id, kept, administration: kept.runner.begin(), isOpen: true, unsaved: [] }
    const refusal = this.#take(one, bodies, user, false)
    if (refusal) throw new Error(`The runner refuses how an administration begins: ${refusal.refused}`)
    this.#inHand.set(id, one)
    return id
  }

  /** As it stands, without opening it: for results and reports. */
  read(store: Store, id: string): InHand {
    return this.#held(store, id)
  }

  /** Opens it on a screen: one that a restart or a long gap has cut says so. */
  open(store: Store, id: string, user: string): Saved {
    return seen(this.#opened(this.#held(store, id), user))
  }

  /**
   * What the examiner did. It is on disk when this returns, unless `saved` is false. On a screen that was left in the
   * middle of a test for longer than the protocol lets pass it is refused as stale: what is to be done comes first.
   */
  act(store: Store, id: string, body: EventBody, user: string): Acted {
    if (HOST_ONLY.has(body.kind)) throw new Refused('host_only_event', { event: body.kind })
    const one = this.#held(store, id)
    if (!one.isOpen) this.#opened(one, user)
    else if (this.#isLeft(one)) {
      this.#opened(one, user)
      return { ...seen(one), taken: false, refusal: refuse('stale') }
    }
    const isEnd = ENDS.has(body.kind)
    if (isEnd) this.#keeping.checkSaved(one)
    const refusal = this.#take(one, [body], user, !isEnd)
    return refusal ? { ...seen(one), taken: false, refusal } : { ...seen(one), taken: true }
  }

  /** Says whose a record is from now on; it stays with what was given. */
  assign(id: string, to: Omit<Assigned, 'kind'>, user: string): AdministrationView {
    const one = this.#held('records', id)
    this.#keeping.checkSaved(one)
    const refusal = this.#take(one, [{ kind: 'assigned', ...to }], user, false)
    if (refusal) throw new Refused('not_movable', { refused: refusal.refused })
    return seen(one).view
  }

  isSaved(store: Store, id: string): boolean {
    return this.#held(store, id).unsaved.length === 0
  }

  /** Tries once more to write what is held in memory, then stops trying. */
  close(): void {
    this.#keeping.close()
    this.#inHand.clear()
  }

  #held(store: Store, id: string): Held {
    const known = this.#inHand.get(id)
    if (known?.store === store) return known
    const loaded = this.#load(store, id)
    this.#inHand.set(id, loaded)
    this.#makeRoom()
    return loaded
  }

  #load(store: Store, id: string): Held {
    const events = this.#stores[store].administration(id)
    const opened = events.map(({ body }) => body).find(isOpened)
    if (!opened) throw new Refused('no_such_administration')
    const { hash } = opened.protocol
    const files = this.#stores[store].read.protocolFiles(hash)
    if (!files) throw new Refused('no_such_protocol', { key: hash })
    const kept = keptProtocol(files)
    const { administration } = kept.runner.replay(events)
    return { store, id, kept, administration, isOpen: false, unsaved: [] }
  }

  /**
   * On a screen: after a restart, and after a gap as long as the protocol lets pass, the runner is told that it
   * was cut. It voids a trial in flight and asks what to do; where there was nothing to cut it refuses, and
   * nothing is written.
   */
  #opened(one: Held, user: string): Held {
    const { phase } = seen(one).view
    const isOver = phase === 'finished' || phase === 'withdrawn'
    const cause = one.isOpen ? 'suspended' : 'restart'
    if (!isOver && (!one.isOpen || this.#isLate(one)))
      this.#take(one, [{ kind: 'interrupted', cause }], user, true)
    one.isOpen = true
    return one
  }

  /** More time has passed since the last event than the protocol lets pass. */
  #isLate({ store, kept, administration: { past } }: Held): boolean {
    if (past === null) return false
    const ms = Date.parse(this.#stores[store].now()) - Date.parse(past.recorded.at)
    return ms > 60_000 * kept.protocol.about.longestGapMinutes
  }

  /** Left so long in the middle of a test, with something still to be given; other phases ask by themselves. */
  #isLeft(one: Held): boolean {
    if (!this.#isLate(one)) return false
    const { phase, step, choosing, asking } = seen(one).view
    return phase === 'giving' && (step !== null || choosing !== null || asking !== null)
  }

  /** Decides and writes bodies and whatever the runner then owes; all of them or none. */
  #take(one: Held, bodies: readonly EventBody[], user: string, mayWait: boolean): Refusal | null {
    const { runner } = one.kept
    const stamped: Stamped[] = []
    let { administration } = one
    const step = (body: EventBody): Refusal | null => {
      const [made] = this.#stores[one.store].stamp(streamOf(one.id), [body], user)
      if (!made) throw new Error('One body makes one event.')
      const next = runner.take(administration, { id: made.id, at: made.at, user, body })
      if ('refused' in next) return next
      administration = next
      stamped.push(made)
      return null
    }
    for (const body of bodies) {
      const refusal = step(body)
      if (refusal) return refusal
    }
    const chance = { random: this.#random, earlier: (section: string) => this.#earlier(one, section) }
    for (let owed = runner.owed(administration, chance); owed; owed = runner.owed(administration, chance)) {
      const refusal = step(owed)
      if (refusal) throw new Error(`The runner refuses what it owes itself: ${refusal.refused}`)
    }
    this.#keeping.keep(one, stamped, mayWait)
    one.administration = administration
    this.#keeping.tell(one)
    return null
  }

  /** The orders that were balanced for a section in other administrations of the same protocol. */
  #earlier({ store, id, kept }: Held, section: string): readonly (readonly string[])[] {
    return this.#stores[store].read
      .ordersOf(kept.protocol.id, section)
      .filter(({ administration, rule }) => administration !== id && rule === BALANCED)
      .map(({ items }) => items)
  }

  /** Lets go of what has been left longest; what is not on disk yet is never let go. */
  #makeRoom(): void {
    for (const [id, one] of this.#inHand) {
      if (this.#inHand.size <= MOST_IN_HAND) return
      if (!one.unsaved.length) this.#inHand.delete(id)
    }
  }
}

const isOpened = (body: EventBody): body is Extract<EventBody, { kind: 'opened' }> => body.kind === 'opened'

const seen = (one: Held): Saved => ({
  view: one.kept.runner.view(one.administration, one.id),
  saved: one.unsaved.length === 0,
})
