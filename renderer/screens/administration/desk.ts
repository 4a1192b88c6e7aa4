/**
 * The screen's hold on one administration: it sends what the examiner does, one act after another, and shows
 * nothing before the host has answered. No press is lost: one that can't be sent waits and is sent again.
 */
import { CallFailed } from '../../../main/contract/client.ts'
import type { Fault } from '../../../main/contract/procedure.ts'
import type { Input, Name, Output } from '../../../main/contract/procedures.ts'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { AdministrationView, Refusal } from '../../../protocols/runner/view.ts'

/** What an act means is known only when its turn comes: by the view that stands then. Null: nothing, after all. */
export type Intent = (view: AdministrationView) => EventBody | null

export interface DeskState {
  readonly view: AdministrationView | null
  /** False while the host holds in memory what the disk refuses. */
  readonly saved: boolean
  /** Why the last act was not taken; cleared by the next. */
  readonly refusal: Refusal | null
  /** A call that came to nothing. While it is `host_gone`, it is tried again. */
  readonly fault: Fault | null
  /** Acts that have not been answered yet. */
  readonly waiting: number
}

export interface Desk {
  readonly state: () => DeskState
  /** Hears every change of the state, until the returned function is called. */
  readonly listen: (heard: () => void) => () => void
  /** Sends an act. A `quiet` one leaves no refusal behind: whoever sent it says so in place. */
  readonly act: (intent: Intent, quiet: boolean) => Promise<Acted>
  readonly read: () => Promise<void>
  /** The host says that something was written: read again, unless an answer is on its way anyhow. */
  readonly heard: () => void
}

interface Acted {
  readonly taken: boolean
  readonly refusal: Refusal | null
}

export interface DeskHost {
  readonly call: <N extends Name>(name: N, input: Input<N>) => Promise<Output<N>>
  readonly later: (ms: number) => Promise<void>
}

const START: DeskState = { view: null, saved: true, refusal: null, fault: null, waiting: 0 }

const NOTHING: Acted = { taken: false, refusal: null }

/** How long to wait before a host that didn't answer is asked again, in ms. */
const AGAIN = 700

/** Answers that don't say whether the act was written. */
const UNKNOWN_END: readonly string[] = ['host_gone', 'bad_reply']

interface Waiting {
  readonly intent: Intent
  readonly quiet: boolean
  readonly done: (acted: Acted) => void
}

type Which = Pick<Input<'administrations.act'>, 'store' | 'id'>
type Answer = Output<'administrations.act'>

async function readUntilAnswered(host: DeskHost, which: Which): Promise<Output<'administrations.view'>> {
  for (;;) {
    await host.later(AGAIN)
    try {
      return await host.call('administrations.view', which)
    } catch (error) {
      if (!UNKNOWN_END.includes(faultIn(error).code)) throw error
    }
  }
}

/** Sends a body until it is known to be taken or refused; `failed` hears of every try that got no answer. */
async function sendUntilKnown(
  host: DeskHost,
  which: Which,
  act: {
    readonly body: EventBody
    readonly before: AdministrationView
    readonly failed: (fault: Fault) => void
  },
): Promise<Answer> {
  for (;;) {
    try {
      return await host.call('administrations.act', { ...which, body: act.body })
    } catch (error) {
      const fault = faultIn(error)
      if (!UNKNOWN_END.includes(fault.code)) throw error
      act.failed(fault)
      const now = await readUntilAnswered(host, which)
      // Nobody else acts here: a view that has moved means that the act had been written.
      if (JSON.stringify(now.view) !== JSON.stringify(act.before)) return { taken: true, ...now }
    }
  }
}

/** Opens the desk of one administration; it holds nothing until it is told to read. */
export function openDesk(host: DeskHost, which: Which): Desk {
  let state = START
  let busy = false
  const queue: Waiting[] = []
  const listeners = new Set<() => void>()

  const set = (change: Partial<DeskState>): void => {
    state = { ...state, ...change, waiting: queue.length + (busy ? 1 : 0) }
    for (const heard of listeners) heard()
  }
  const read = async (): Promise<void> => {
    try {
      set({ ...(await host.call('administrations.view', which)), fault: null })
    } catch (error) {
      set({ fault: faultIn(error) })
    }
  }
  const one = async ({ intent, quiet }: Waiting): Promise<Acted> => {
    const before = state.view
    const body = before === null ? null : intent(before)
    if (before === null || body === null) return NOTHING
    const answer = await sendUntilKnown(host, which, { body, before, failed: (fault) => set({ fault }) })
    const refusal = answer.taken ? null : answer.refusal
    set({ view: answer.view, saved: answer.saved, refusal: quiet ? null : refusal, fault: null })
    return { taken: answer.taken, refusal }
  }
  const work = async (): Promise<void> => {
    if (busy) return
    busy = true
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      set({})
      try {
        next.done(await one(next))
      } catch (error) {
        set({ fault: faultIn(error) })
        next.done(NOTHING)
      }
    }
    busy = false
    set({})
  }
  return {
    state: () => state,
    listen: (heard) => {
      listeners.add(heard)
      return () => listeners.delete(heard)
    },
    read,
    heard: () => {
      if (!busy) void read()
    },
    act: (intent, quiet) =>
      new Promise((done) => {
        queue.push({ intent, quiet, done })
        void work()
      }),
  }
}

function faultIn(error: unknown): Fault {
  return error instanceof CallFailed ? error.fault : { code: 'defect', detail: { name: '' } }
}
