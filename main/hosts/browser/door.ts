/**
 * Who and what comes in: the right host and origin, the token of this launch or the cookie it gave, and calls as
 * JSON of a bounded size. Everything else is refused before anything is read.
 */
import type { IncomingMessage, ServerResponse } from 'node:http'
import type { FaultCode } from '../../contract/faults.ts'
import type { Reply } from '../../contract/procedure.ts'
import { CALL_HEADER, CALL_PATH, PUSHES_PATH } from '../../contract/transport.ts'
import { type Answer, SAFE_HEADERS } from '../respond.ts'
import { say } from '../words.ts'
import type { ServerParts } from './server.ts'
import type { Sessions } from './sessions.ts'

/** A call's input is text that somebody typed; the largest is a note. */
const BODY_LIMIT = 1_000_000
const CALL_ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

interface Place {
  /** `127.0.0.1:<port>`: the only name that this host answers to. */
  readonly host: string
  readonly sessions: Sessions
}

export type Door = (request: IncomingMessage, response: ServerResponse) => Promise<void>

export function createDoor({ respond, dispatch, listen }: Omit<ServerParts, 'port'>, place: Place): Door {
  const { host, sessions } = place
  const origin = `http://${host}`

  /** Calls must say that they come from this very page; anything else mustn't say that it comes from elsewhere. */
  function isOwn({ headers }: IncomingMessage, required: boolean): boolean {
    return headers.origin === undefined ? !required : headers.origin === origin
  }

  function enter({ method }: IncomingMessage, response: ServerResponse, token: string): void {
    const cookie = method === 'GET' ? sessions.enter(token) : null
    if (!cookie) return page(response, 403, say('browser.wrong_token'))
    response.writeHead(303, { ...SAFE_HEADERS, location: '/', 'set-cookie': cookie }).end()
  }

  function pushes(response: ServerResponse): void {
    response.writeHead(200, { ...SAFE_HEADERS, 'content-type': 'text/event-stream' })
    response.write('retry: 500\n\n')
    const deaf = listen((push) => response.write(`data: ${JSON.stringify(push)}\n\n`))
    response.on('close', deaf)
  }

  async function call(request: IncomingMessage, response: ServerResponse, name: string): Promise<void> {
    const session = sessions.find(request.headers.cookie)
    if (!session) return answer(response, 403, fault('session_over'))
    if (request.method !== 'POST' || !isJson(request)) return answer(response, 403, fault('foreign_request'))
    const body = await read(request)
    if (body === null) return answer(response, 413, fault('body_too_large', { limit: BODY_LIMIT }))
    const parsed = parse(body)
    if (!parsed) return answer(response, 400, fault('not_json'))
    const id = request.headers[CALL_HEADER]
    const callId = typeof id === 'string' && CALL_ID.test(id) ? id : crypto.randomUUID()
    answer(response, 200, await dispatch(session, name, parsed.json, callId))
  }

  return async (request, response) => {
    if (request.headers.host !== host) return page(response, 421, say('browser.wrong_host'))
    const asked = request.url ?? '/'
    if (!asked.startsWith('/')) return page(response, 400, say('browser.foreign'))
    // Put together and not resolved: `//elsewhere` would name another host.
    const url = new URL(`${origin}${asked}`)
    if (url.pathname.startsWith(CALL_PATH)) {
      if (!isOwn(request, true)) return answer(response, 403, fault('foreign_request'))
      return call(request, response, url.pathname.slice(CALL_PATH.length))
    }
    if (!isOwn(request, false)) return page(response, 403, say('browser.foreign'))
    if (url.pathname === '/enter') return enter(request, response, url.searchParams.get('token') ?? '')
    if (!sessions.find(request.headers.cookie)) return page(response, 403, say('browser.no_session'))
    if (url.pathname === PUSHES_PATH && request.method === 'GET') return pushes(response)
    return send(response, await respond(request.method ?? 'GET', url.pathname))
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

function send(response: ServerResponse, { status, headers, body }: Answer): void {
  response.writeHead(status, headers).end(body)
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
