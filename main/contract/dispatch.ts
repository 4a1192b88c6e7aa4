/**
 * The host's end of the contract: the one door through which every call of every screen comes. It knows who
 * calls from the host's session, checks what goes in and what comes out, and never throws.
 */
import './jitless.ts'
import type { FaultCode } from './faults.ts'
import { pointerTo } from './pointer.ts'
import { type Procedure, Refused, type Reply } from './procedure.ts'
import { type Input, type Name, type Output, type Procedures, procedures } from './procedures.ts'
import type { Push } from './pushes.ts'

export interface User {
  readonly id: string
  readonly name: string
}

/** Who sits at a screen, as its host knows it: one per browser session or window. */
export interface Session {
  readonly id: string
  user: User | null
}

interface Context<N extends Name = Name> {
  readonly session: Session
  /** Who calls; known to be somebody where the call needs a user. */
  readonly user: Procedures[N]['needs'] extends 'user' ? User : User | null
  /** Aborted when the screen stops the call. */
  readonly signal: AbortSignal
  /** Tells the screen how far a long call is; throws `stopped` when it was stopped. */
  progress(done: number, doing: string): Promise<void>
}

type Handler<N extends Name> = (input: Input<N>, context: Context<N>) => Output<N> | Promise<Output<N>>
export type Handlers = { readonly [N in Name]: Handler<N> }

export type Dispatch = (session: Session, name: string, raw: unknown, call: string) => Promise<Reply>

/** What is known of the calls made since the host started, by name: no inputs, no answers. */
interface CallCount {
  made: number
  failed: number
  /** How many of them answered with a client's record. */
  showedClient: number
}

export interface Dispatcher {
  readonly dispatch: Dispatch
  readonly counts: ReadonlyMap<Name, CallCount>
}

interface Parts {
  readonly handlers: Omit<Handlers, 'calls.stop'>
  push(push: Push): void
  /** Told of a defect of ours: the call's name and the error. It must keep client data out of any log. */
  onDefect(name: string, error: unknown): void
}

const refuse = (code: FaultCode, detail: Record<string, string> = {}): Reply => ({
  ok: false,
  fault: { code, detail },
})

export function createDispatcher({ handlers, push, onDefect }: Parts): Dispatcher {
  const running = new Map<string, { readonly session: string; readonly stop: AbortController }>()
  const counts = new Map<Name, CallCount>()

  const stopCall: Handler<'calls.stop'> = ({ call }, { session }) => {
    const found = running.get(call)
    if (found?.session === session.id) found.stop.abort()
    return {}
  }
  const all: Handlers = { ...handlers, 'calls.stop': stopCall }

  async function answer(name: Name, input: unknown, session: Session, call: string): Promise<Reply> {
    const stop = new AbortController()
    running.set(call, { session: session.id, stop })
    const progress: Context['progress'] = async (done, doing) => {
      push({ push: 'progress', call, done, doing })
      // Lets the call that stops this one through before going on.
      await new Promise((resolve) => setImmediate(resolve))
      if (stop.signal.aborted) throw new Refused('stopped')
    }
    try {
      const handler = all[name] as (input: unknown, context: unknown) => unknown
      const value = await handler(input, { session, user: session.user, signal: stop.signal, progress })
      const checked = procedures[name].output.safeParse(value)
      if (checked.success) return { ok: true, value: checked.data }
      onDefect(name, checked.error)
      return refuse('bad_output', { name, ...pointerTo(checked.error) })
    } catch (error) {
      if (error instanceof Refused) return { ok: false, fault: error.fault }
      onDefect(name, error)
      return refuse('defect', { name })
    } finally {
      running.delete(call)
    }
  }

  /** The one place that every call passes on its way out: counted here; an audit is to be written here. */
  function account(name: Name, { showsClient }: Procedure, reply: Reply): Reply {
    const count = counts.get(name) ?? { made: 0, failed: 0, showedClient: 0 }
    count.made += 1
    if (!reply.ok) count.failed += 1
    if (reply.ok && showsClient) count.showedClient += 1
    counts.set(name, count)
    return reply
  }

  const dispatch: Dispatch = async (session, name, raw, call) => {
    if (!isName(name)) return refuse('unknown_call', { name: name.slice(0, 100) })
    const wanted: Procedure = procedures[name]
    if (wanted.needs === 'user' && !session.user)
      return account(name, wanted, refuse('user_needed', { name }))
    const input = wanted.input.safeParse(raw)
    if (!input.success) return account(name, wanted, refuse('bad_input', { name, ...pointerTo(input.error) }))
    if (running.has(call)) return account(name, wanted, refuse('call_id_taken', { name }))
    return account(name, wanted, await answer(name, input.data, session, call))
  }

  return { dispatch, counts }
}

function isName(name: string): name is Name {
  return Object.hasOwn(procedures, name)
}
