/** The screens' way to the host: one client for the page, and what to do when nobody answers any more. */
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import { CallFailed, type CallOptions, type Client } from '../../main/contract/client.ts'
import type { Fault } from '../../main/contract/procedure.ts'
import type { Input, Name, Output } from '../../main/contract/procedures.ts'
import type { Push } from '../../main/contract/pushes.ts'

export type { Fault } from '../../main/contract/procedure.ts'

interface Host extends Client {
  /** True from a call that nobody answered until the host answers again. */
  readonly isGone: boolean
}

const HostContext = createContext<Host | null>(null)

/** How often a host that went silent is asked again, in ms. */
const ASK_AGAIN = 1500

export function HostProvider({
  client,
  children,
}: {
  readonly client: Client
  readonly children: ReactNode
}) {
  const [isGone, setGone] = useState(false)
  const call = useCallback(
    async <N extends Name>(name: N, input: Input<N>, options?: CallOptions): Promise<Output<N>> => {
      try {
        return await client.call(name, input, options)
      } catch (error) {
        if (faultOf(error).code === 'host_gone') setGone(true)
        throw error
      }
    },
    [client],
  )
  useEffect(() => {
    if (!isGone) return
    const timer = setInterval(() => {
      client.call('clinic.state', {}).then(
        () => setGone(false),
        (error) => {
          if (faultOf(error).code !== 'host_gone') setGone(false)
        },
      )
    }, ASK_AGAIN)
    return () => clearInterval(timer)
  }, [client, isGone])
  const listen = useShared(client.listen)
  const host = useMemo(() => ({ call, listen, isGone }), [call, listen, isGone])
  return <HostContext value={host}>{children}</HostContext>
}

/** One ear for the whole page: a browser allows only six connections to a host, and each listener is one. */
function useShared(listen: Client['listen']): Client['listen'] {
  const listeners = useRef(new Set<(push: Push) => void>())
  useEffect(
    () =>
      listen((push) => {
        for (const listener of listeners.current) listener(push)
      }),
    [listen],
  )
  return useCallback((listener) => {
    listeners.current.add(listener)
    return () => {
      listeners.current.delete(listener)
    }
  }, [])
}

export function useHost(): Host {
  const host = useContext(HostContext)
  if (!host) throw new Error('useHost stands outside its HostProvider')
  return host
}

/** What went wrong in a call; anything that is no `CallFailed` is a defect of ours. */
function faultOf(error: unknown): Fault {
  if (error instanceof CallFailed) return error.fault
  console.error(error)
  return { code: 'defect', detail: { name: '' } }
}

/** Hears the host's pushes as long as the component stands. */
export function usePushes(hear: (push: Push) => void): void {
  const { listen } = useHost()
  useEffect(() => listen(hear), [listen, hear])
}

export interface Reading<T> {
  /** The last answer; null until there is one. */
  readonly value: T | null
  readonly fault: Fault | null
  readonly again: () => void
}

/**
 * Reads by a call and keeps reading: again when the input changes, when a push touches what is shown, and when
 * a host that was gone is back. The last answer stays in sight meanwhile.
 */
export function useReading<N extends Name>(
  name: N,
  input: Input<N>,
  touches: (push: Push) => boolean = never,
): Reading<Output<N>> {
  const { call, isGone } = useHost()
  const [answer, setAnswer] = useState<{ of: string; value: Output<N> | null; fault: Fault | null } | null>(
    null,
  )
  const [turn, setTurn] = useState(0)
  const asked = JSON.stringify(input)
  useEffect(() => {
    if (isGone && turn === 0) return
    let isCurrent = true
    call(name, JSON.parse(asked) as Input<N>).then(
      (value) => isCurrent && setAnswer({ of: asked, value, fault: null }),
      (error) =>
        isCurrent &&
        setAnswer((before) => ({
          of: asked,
          value: before?.of === asked ? before.value : null,
          fault: faultOf(error),
        })),
    )
    return () => {
      isCurrent = false
    }
  }, [call, name, asked, turn, isGone])
  const again = useCallback(() => setTurn((before) => before + 1), [])
  usePushes(useCallback((push) => (touches(push) ? again() : undefined), [touches, again]))
  const current = answer?.of === asked ? answer : null
  return { value: current?.value ?? null, fault: current?.fault ?? null, again }
}

const never = () => false

export interface Doing {
  /** Does it; what fails becomes `fault` and is not thrown. Gives whether it was done. */
  readonly run: (work: () => Promise<void>) => Promise<boolean>
  readonly fault: Fault | null
  readonly isBusy: boolean
}

/** For what a person sets off: one at a time, with its fault to be shown in place. */
export function useDoing(): Doing {
  const [fault, setFault] = useState<Fault | null>(null)
  const [isBusy, setBusy] = useState(false)
  const run = useCallback(async (work: () => Promise<void>) => {
    setBusy(true)
    setFault(null)
    try {
      await work()
      return true
    } catch (error) {
      setFault(faultOf(error))
      return false
    } finally {
      setBusy(false)
    }
  }, [])
  return { run, fault, isBusy }
}
