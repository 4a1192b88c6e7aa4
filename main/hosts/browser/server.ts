/**
 * The browser host's door: one port on the loopback interface, for the browser of this machine and for nobody
 * who can't show the token of this launch.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Readable } from 'node:stream'
import type { ReadableStream } from 'node:stream/web'
import type { Dispatch } from '../../contract/dispatch.ts'
import type { FaultCode } from '../../contract/faults.ts'
import type { Reply } from '../../contract/procedure.ts'
import type { Push } from '../../contract/pushes.ts'
import { CALL_HEADER, CALL_PATH, PUSHES_PATH } from '../../contract/transport.ts'
import { type Respond, SAFE_HEADERS } from '../respond.ts'
import { say } from '../words.ts'
import { createSessions } from './sessions.ts'

const LOOPBACK = '127.0.0.1'
/** A call's input is text that somebody typed; the largest is a note. */
const BODY_LIMIT = 1_000_000
const CALL_ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

export interface BrowserServer {
  readonly port: number
  /** The address to open: it carries the token of this launch. */
  readonly entry: string
  close(): Promise<void>
}

interface Parts {
  /** 0: any free port. */
  readonly port: number
  readonly respond: Respond
  readonly dispatch: Dispatch
  listen(listener: (push: Push) => void): () => void
}

/** Starts listening. Rejects with the system's own error (`EADDRINUSE`: the port is taken). */
export async function startServer({ port, respond, dispatch, listen }: Parts): Promise<BrowserServer> {
  const server = createServer((request, response) => {
    handle(request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500, SAFE_HEADERS)
      response.end()
    })
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, LOOPBACK, () => resolve())
  })
  const taken = (server.address() as AddressInfo).port
  const host = `${LOOPBACK}:${taken}`
  const origin = `http://${host}`
  const sessions = createSessions(taken)

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.headers.host !== host) return page(response, 421, say('browser.wrong_host'))
    const path = request.url ?? '/'
    if (!path.startsWith('/')) return page(response, 400, say('browser.foreign'))
    // Put together and not resolved: `//elsewhere` would name another host.
    const url = new URL(`${origin}${path}`)
    const calls = url.pathname.startsWith(CALL_PATH)
    const refuse = (status: number, code: FaultCode, sentence: string) =>
      calls ? answer(response, status, fault(code)) : page(response, status, sentence)
    if (!sameOrigin(request, calls)) return refuse(403, 'foreign_request', say('browser.foreign'))
    if (url.pathname === '/enter') return enter(request, response, url.searchParams.get('token') ?? '')
    const session = sessions.find(request.headers.cookie)
    if (!session) return refuse(403, 'session_over', say('browser.no_session'))
    if (url.pathname === PUSHES_PATH && request.method === 'GET') return pushes(response)
    if (!calls) return send(response, await respond(new Request(url, { method: request.method ?? 'GET' })))
    if (request.method !== 'POST' || !isJson(request)) return answer(response, 403, fault('foreign_request'))
    const body = await read(request)
    if (body === null) return answer(response, 413, fault('body_too_large', { limit: BODY_LIMIT }))
    const parsed = parse(body)
    if (!parsed) return answer(response, 400, fault('not_json'))
    const id = request.headers[CALL_HEADER]
    const call = typeof id === 'string' && CALL_ID.test(id) ? id : crypto.randomUUID()
    const name = url.pathname.slice(CALL_PATH.length)
    answer(response, 200, await dispatch(session, name, parsed.json, call))
  }

  /** Calls must say that they come from this very page; anything else mustn't say that it comes from elsewhere. */
  function sameOrigin(request: IncomingMessage, required: boolean): boolean {
    const said = request.headers.origin
    return said === undefined ? !required : said === origin
  }

  function enter(request: IncomingMessage, response: ServerResponse, token: string): void {
    const cookie = request.method === 'GET' ? sessions.enter(token) : null
    if (!cookie) return page(response, 403, say('browser.wrong_token'))
    response.writeHead(303, { ...SAFE_HEADERS, location: '/', 'set-cookie': cookie }).end()
  }

  function pushes(response: ServerResponse): void {
    response.writeHead(200, { ...SAFE_HEADERS, 'content-type': 'text/event-stream' })
    response.write('retry: 500\n\n')
    const deaf = listen((push) => response.write(`data: ${JSON.stringify(push)}\n\n`))
    response.on('close', deaf)
  }

  return {
    port: taken,
    entry: `${origin}/enter?token=${sessions.token}`,
    close: () =>
      new Promise<void>((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

const fault = (code: FaultCode, detail: Record<string, number> = {}): Reply => ({
  ok: false,
  fault: { code, detail },
})

function answer(response: ServerResponse, status: number, reply: Reply): void {
  response.writeHead(status, { ...SAFE_HEADERS, 'content-type': 'application/json; charset=utf-8' })
  response.end(JSON.stringify(reply))
}

function page(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, {
    ...SAFE_HEADERS,
    'content-type': 'text/plain; charset=utf-8',
    'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
  })
  response.end(`${sentence}\n`)
}

function send(response: ServerResponse, from: Response): void {
  response.writeHead(from.status, Object.fromEntries(from.headers))
  if (from.body) Readable.fromWeb(from.body as ReadableStream).pipe(response)
  else response.end()
}

const isJson = (request: IncomingMessage) =>
  /^application\/json(;\s*charset=utf-8)?$/i.test(request.headers['content-type'] ?? '')

/** The whole body, or null when it is larger than any call's. */
async function read(request: IncomingMessage): Promise<string | null> {
  const parts: Buffer[] = []
  let size = 0
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length
    // What is too much is read on and dropped: ending the stream would end the connection before the answer.
    if (size <= BODY_LIMIT) parts.push(part)
  }
  if (size > BODY_LIMIT) return null
  return Buffer.concat(parts).toString('utf8')
}

function parse(body: string): { readonly json: unknown } | null {
  try {
    return { json: JSON.parse(body) as unknown }
  } catch {
    return null
  }
}
