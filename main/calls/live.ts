/**
 * Administrations in hand. Every act is decided by the runner, written durably, and only then answered. When the
 * disk refuses in the middle of a test, what happens is held in memory in its order and tried again until it is
 * kept; meanwhile every answer says that it is not saved, and nothing can be finished.
 */
import type { EventBody } from '../../protocols/runner/events.ts'
import type { Administration } from '../../protocols/runner/index.ts'
import type { AdministrationView, Refusal } from '../../protocols/runner/view.ts'
import { Refused } from '../contract/procedure.ts'
import type { Push } from '../contract/pushes.ts'
import type { Records, Stamped, Stream } from '../records/index.ts'
import { type Kept, keptProtocol } from './kept.ts'

type Assigned = Extract<EventBody, { kind: 'assigned' }>

export type Store = 'records' | 'rehearsal'
export type Stores = Readonly<Record<Store, Records>>

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

export interface Live {
  /** Starts an administration: its first events are on disk, or nothing is. */
  begin(store: Store, kept: Kept, bodies: readonly EventBody[], user: string): string
  /** As it stands, without opening it: for results and reports. */
  read(store: Store, id: string): InHand
  /** Opens it on a screen: one that a restart or a long gap has cut says so. */
  open(store: Store, id: string, user: string): Saved
  /** What the examiner did. The events that say whose and what it is are not for screens to make. */
  act(store: Store, id: string, body: EventBody, user: string): Acted
  /** Says whose a record is from now on; it stays with what was given. */
  assign(id: string, to: Omit<Assigned, 'kind'>, user: string): AdministrationView
  isSaved(store: Store, id: string): boolean
  /** Tries once more to write what is held in memory, then stops trying. */
  close(): void
}

interface Held extends InHand {
  administration: Administration
  /** True once a screen has it: one that this process has only read was cut by whatever ended the last. */
  isOpen: boolean
  unsaved: Stamped[]
}

interface Parts {
  readonly stores: Stores
  push(push: Push): void
  /** A number from 0 up to 1 that nobody can foresee. */
  random(): number
}

/** ms between two tries to write what the disk refused. */
const AGAIN = 1000
/** More than a desk has open at once. */
const MOST_IN_HAND = 16
/** The codes by which the records say that the disk is at fault and the same may be tried again. */
const DISK_AT_FAULT: readonly string[] = ['records.disk-refused', 'records.busy']

/** Acts after which somebody relies on what is on record. */
const ENDS: ReadonlySet<string> = new Set(['finished', 'withdrawn', 'noted'])

const streamOf = (id: string): Stream => ({ kind: 'administration', id })

export function createLive({ stores, push, random }: Parts): Live {
  const inHand = new Map<string, Held>()
  let timer: NodeJS.Timeout | null = null

  function load(store: Store, id: string): Held {
    const events = stores[store].administration(id)
    const [first] = events
    if (first?.body.kind !== 'opened') throw new Refused('no_such_administration')
    const { hash } = (first.body as Extract<EventBody, { kind: 'opened' }>).protocol
    const files = stores[store].read.protocolFiles(hash)
    if (!files) throw new Refused('no_such_protocol', { key: hash })
    const kept = keptProtocol(files)
    const { administration } = kept.runner.replay(events)
    return { store, id, kept, administration, isOpen: false, unsaved: [] }
  }

  function held(store: Store, id: string): Held {
    const known = inHand.get(id)
    if (known?.store === store) return known
    const loaded = load(store, id)
    inHand.set(id, loaded)
    makeRoom()
    return loaded
  }

  /**
   * Tells the runner that giving was cut; where there was nothing to cut it refuses, and nothing is written. It
   * is the runner that voids a trial in flight and asks what to do after a long gap.
   */
  function interrupt(one: Held, cause: 'restart' | 'suspended', user: string): void {
    take(one, [{ kind: 'interrupted', cause }], user, true)
  }

  /**
   * Decides and writes bodies and whatever the runner then owes; all of them or none.
   * @param mayWait whether it may go on in memory while the disk refuses; else the disk's refusal is thrown
   */
  function take(one: Held, bodies: readonly EventBody[], user: string, mayWait: boolean): Refusal | null {
    const records = stores[one.store]
    const stamped: Stamped[] = []
    let { administration } = one
    const step = (body: EventBody): Refusal | null => {
      const [made] = records.stamp(streamOf(one.id), [body], user)
      if (!made) return null
      const next = one.kept.runner.take(administration, { id: made.id, at: made.at, user, body })
      if ('refused' in next) return next
      administration = next
      stamped.push(made)
      return null
    }
    for (const body of bodies) {
      const refusal = step(body)
      if (refusal) return refusal
    }
    for (
      let owed = one.kept.runner.owed(administration, { random });
      owed !== null;
      owed = one.kept.runner.owed(administration, { random })
    ) {
      const refusal = step(owed)
      if (refusal) throw new Error(`The runner refuses what it owes itself: ${refusal.refused}`)
    }
    keep(one, stamped, mayWait)
    one.administration = administration
    push({ push: 'administration', store: one.store, id: one.id, saved: one.unsaved.length === 0 })
    return null
  }

  function keep(one: Held, stamped: readonly Stamped[], mayWait: boolean): void {
    const all = [...one.unsaved, ...stamped]
    try {
      stores[one.store].keep(all)
      one.unsaved = []
    } catch (error) {
      const canWait = error instanceof Refused && DISK_AT_FAULT.includes(error.fault.code)
      if (!canWait || !mayWait) throw error
      one.unsaved = all
      tryLater()
    }
  }

  function tryLater(): void {
    timer ??= setTimeout(() => {
      timer = null
      for (const one of inHand.values()) {
        try {
          if (one.unsaved.length) flush(one)
        } catch {
          // Whatever it is, it stays unsaved and said so; the next act meets the same error and answers with it.
          tryLater()
        }
      }
    }, AGAIN)
    timer.unref()
  }

  /** Lets go of what has been left longest; what is not on disk yet is never let go. */
  function makeRoom(): void {
    for (const [id, one] of inHand) {
      if (inHand.size <= MOST_IN_HAND) return
      if (!one.unsaved.length) inHand.delete(id)
    }
  }

  function flush(one: Held): void {
    keep(one, [], true)
    if (!one.unsaved.length) push({ push: 'administration', store: one.store, id: one.id, saved: true })
  }

  function checkSaved(one: Held): void {
    if (one.unsaved.length) flush(one)
    if (one.unsaved.length) throw new Refused('not_saved')
  }

  const seen = (one: Held): Saved => ({
    view: one.kept.runner.view(one.administration, one.id),
    saved: one.unsaved.length === 0,
  })

  /** On a screen: after a restart, and after a gap as long as the protocol lets pass, it was cut. */
  function opened(store: Store, id: string, user: string): Held {
    const one = held(store, id)
    const { lastAt, phase } = seen(one).view
    const isOver = phase === 'finished' || phase === 'withdrawn'
    const minutes = (Date.parse(stores[store].now()) - Date.parse(lastAt)) / 60_000
    const isLate = minutes > one.kept.protocol.about.longestGapMinutes
    if (!isOver && (!one.isOpen || isLate)) interrupt(one, one.isOpen ? 'suspended' : 'restart', user)
    one.isOpen = true
    return one
  }

  return {
    begin(store, kept, bodies, user) {
      const id = stores[store].newId()
      const one: Held = { store, id, kept, administration: kept.runner.begin(), isOpen: true, unsaved: [] }
      const refusal = take(one, bodies, user, false)
      if (refusal) throw new Error(`The runner refuses how an administration begins: ${refusal.refused}`)
      inHand.set(id, one)
      return id
    },
    read: held,
    open: (store, id, user) => seen(opened(store, id, user)),
    act(store, id, body, user) {
      const known = held(store, id)
      const one = known.isOpen ? known : opened(store, id, user)
      if (body.kind === 'opened' || body.kind === 'assigned')
        throw new Refused('host_only_event', { event: body.kind })
      const isEnd = ENDS.has(body.kind)
      if (isEnd) checkSaved(one)
      const refusal = take(one, [body], user, !isEnd)
      return refusal ? { ...seen(one), taken: false, refusal } : { ...seen(one), taken: true }
    },
    assign(id, to, user) {
      const one = held('records', id)
      checkSaved(one)
      const refusal = take(one, [{ kind: 'assigned', ...to }], user, false)
      if (refusal) throw new Refused('not_movable', { refused: refusal.refused })
      return seen(one).view
    },
    isSaved: (store, id) => held(store, id).unsaved.length === 0,
    close() {
      if (timer) clearTimeout(timer)
      for (const one of inHand.values()) if (one.unsaved.length) keep(one, [], true)
      inHand.clear()
    },
  }
}
