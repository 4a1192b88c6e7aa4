/**
 * The browser host's port: one on the loopback interface, for the browser of this machine and for nobody who
 * can't show the token of this launch.
 */
import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Dispatch } from '../../contract/dispatch.ts'
import type { Push } from '../../contract/pushes.ts'
import { type Respond, SAFE_HEADERS } from '../respond.ts'
import { createDoor } from './door.ts'
import { createSessions } from './sessions.ts'

// Not by `import`: that would read all that the module offers, a client for other hosts among it, at every start.
const { createServer } = process.getBuiltinModule('node:http')

const LOOPBACK = '127.0.0.1'

export interface BrowserServer {
  readonly port: number
  /** The address to open: it carries the token of this launch. */
  readonly entry: string
  close(): Promise<void>
}

export interface ServerParts {
  /** 0: any free port. */
  readonly port: number
  readonly respond: Respond
  readonly dispatch: Dispatch
  /** Hears every push until the returned function is called. */
  listen(listener: (push: Push) => void): () => void
}

/** Starts listening. Rejects with the system's own error (`EADDRINUSE`: the port is taken). */
export async function startServer(parts: ServerParts): Promise<BrowserServer> {
  const server = createServer()
  const port = await listenOn(server, parts.port)
  const host = `${LOOPBACK}:${port}`
  const sessions = createSessions(port)
  const door = createDoor(parts, { host, sessions })
  server.on('request', (request, response) => {
    door(request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500, SAFE_HEADERS)
      response.end()
    })
  })
  return {
    port,
    entry: `http://${host}/enter?token=${sessions.token}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

async function listenOn(server: Server, port: number): Promise<number> {
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, LOOPBACK, () => resolve())
  })
  return (server.address() as AddressInfo).port
}
