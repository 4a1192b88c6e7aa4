/** A browser's end of the browser host, for tests in Node: it keeps the cookie and reads pushes. */
import { request } from 'node:http'
import type { HttpMachine } from '../../main/contract/transport.ts'

export interface Answer {
  readonly status: number
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
  readonly body: string
}

interface Ask {
  readonly port: number
  readonly path: string
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string
}

/** One request with exactly these headers: `fetch` would not let a test set Host or Origin. */
export function ask({ port, path, method = 'GET', headers = {}, body }: Ask): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts).toString('utf8'),
        }),
      )
    })
    sent.on('error', reject)
    sent.end(body)
  })
}

/** Enters by the printed address and gives the machine that the HTTP transport runs on. */
export async function enter(entry: string): Promise<HttpMachine & { readonly cookie: string }> {
  const { port, host, origin, pathname, search } = new URL(entry)
  const entered = await ask({ port: Number(port), path: `${pathname}${search}`, headers: { host } })
  const cookie = String(entered.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? ''
  return {
    cookie,
    async fetch(path, init) {
      const headers = { ...(init.headers as Record<string, string>), host, origin, cookie }
      const answer = await ask({
        port: Number(port),
        path,
        method: init.method ?? 'GET',
        headers,
        body: String(init.body ?? ''),
      })
      return new Response(answer.body, { status: answer.status })
    },
    openEvents(path) {
      const events = Object.assign(new EventTarget(), { close: () => void listening.destroy() })
      const listening = request({ host: '127.0.0.1', port, path, headers: { host, cookie } }, (response) => {
        let rest = ''
        response.setEncoding('utf8')
        response.on('data', (part: string) => {
          const blocks = `${rest}${part}`.split('\n\n')
          rest = blocks.pop() ?? ''
          for (const block of blocks) {
            if (!block.startsWith('data: ')) continue
            events.dispatchEvent(new MessageEvent('message', { data: block.slice('data: '.length) }))
          }
        })
        response.on('error', () => {})
      })
      listening.on('error', () => {})
      listening.end()
      return events
    },
  }
}
