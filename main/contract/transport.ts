/**
 * How a screen reaches its host. Both hosts carry the same calls; what crosses is plain data and is trusted by
 * neither end.
 */

export interface Transport {
  /** Sends one call; `call` is the id by which its progress comes and by which it can be stopped. */
  invoke(name: string, input: unknown, call: string): Promise<unknown>
  /** Hears what the host pushes, until the returned function is called. */
  listen(listener: (push: unknown) => void): () => void
}

declare global {
  interface Window {
    /** Put there by the desktop shell's preload; absent in the browser host. */
    readonly evenhand?: Transport
  }
}

/** What the HTTP transport needs of the machine it runs on. */
export interface HttpMachine {
  fetch(path: string, init: RequestInit): Promise<Response>
  openEvents(path: string): EventTarget & { close(): void }
}

export const CALL_HEADER = 'evenhand-call'
export const CALL_PATH = '/call/'
export const PUSHES_PATH = '/pushes'

/** Calls as `POST /call/<name>`, pushes as server-sent events. Rejects when the host can't be reached. */
export function httpTransport(machine: HttpMachine): Transport {
  return {
    async invoke(name, input, call) {
      const response = await machine.fetch(`${CALL_PATH}${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', [CALL_HEADER]: call },
        body: JSON.stringify(input),
      })
      return response.json()
    },
    listen(listener) {
      const events = machine.openEvents(PUSHES_PATH)
      events.addEventListener('message', (event) => {
        if (event instanceof MessageEvent) listener(JSON.parse(String(event.data)))
      })
      return () => events.close()
    },
  }
}

/** The transport of the screen that this runs in: the desktop shell's where there is one. */
export function screenTransport(): Transport {
  return (
    window.evenhand ??
    httpTransport({
      fetch: (path, init) => fetch(path, init),
      openEvents: (path) => new EventSource(path),
    })
  )
}
