/** The screen's end of the contract: typed calls, checked before they leave and when their answer arrives. */
import './jitless.ts'
import type { FaultCode } from './faults.ts'
import { pointerTo } from './pointer.ts'
import { type Fault, reply } from './procedure.ts'
import { type Input, type Name, type Output, procedures } from './procedures.ts'
import { type Push, push } from './pushes.ts'
import type { Transport } from './transport.ts'

/** A call that came to nothing. `fault.code` has a sentence in the words; `fault.detail` its values. */
export class CallFailed extends Error {
  readonly fault: Fault
  constructor(fault: Fault) {
    super(fault.code)
    this.name = 'CallFailed'
    this.fault = fault
  }
}

const failed = (code: FaultCode, detail: Fault['detail']) => new CallFailed({ code, detail })

export interface CallOptions {
  /** Hears how far a long call is: `done` from 0 to 1, `doing` a code with a sentence in the words. */
  readonly onProgress?: (done: number, doing: string) => void
  /** Aborting it stops a long call at the host; the call then fails with `stopped`. */
  readonly signal?: AbortSignal
}

export interface Client {
  /** Makes a call. Rejects with `CallFailed` and nothing else. */
  call<N extends Name>(name: N, input: Input<N>, options?: CallOptions): Promise<Output<N>>
  /** Hears what the host tells every open screen, until the returned function is called. */
  listen(listener: (push: Push) => void): () => void
}

/** @param transport the way to the host; what comes back over it is checked like anything foreign */
export function createClient(transport: Transport): Client {
  const listen: Client['listen'] = (listener) =>
    transport.listen((raw) => {
      const heard = push.safeParse(raw)
      if (heard.success) listener(heard.data)
    })

  const call: Client['call'] = async (name, input, options = {}) => {
    const { input: inputShape, output: outputShape } = procedures[name]
    const sent = inputShape.safeParse(input)
    if (!sent.success) throw failed('bad_input', { name, ...pointerTo(sent.error) })
    const callId = crypto.randomUUID()
    const release = follow(callId, options)
    try {
      const answered = await invoke(name, sent.data, callId)
      if (!answered.ok) throw new CallFailed(answered.fault)
      const value = outputShape.safeParse(answered.value)
      if (!value.success) throw failed('bad_output', { name, ...pointerTo(value.error) })
      return value.data as Output<typeof name>
    } finally {
      release()
    }
  }

  async function invoke(name: Name, input: unknown, callId: string) {
    let raw: unknown
    try {
      raw = await transport.invoke(name, input, callId)
    } catch {
      throw failed('host_gone', { name })
    }
    const answered = reply.safeParse(raw)
    if (!answered.success) throw failed('bad_reply', { name })
    return answered.data
  }

  /** Passes a call's progress on and its abort over, for as long as it runs. */
  function follow(callId: string, { onProgress, signal }: CallOptions): () => void {
    const deaf = onProgress
      ? listen((heard) => {
          if (heard.push === 'progress' && heard.call === callId) onProgress(heard.done, heard.doing)
        })
      : () => {}
    const stop = () => void call('calls.stop', { call: callId }).catch(() => {})
    signal?.addEventListener('abort', stop, { once: true })
    return () => {
      deaf()
      signal?.removeEventListener('abort', stop)
    }
  }

  return { call, listen }
}
