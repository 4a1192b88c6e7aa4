/** Starts the built browser host on a records folder of its own and ends it by its own pid. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'

const root = join(import.meta.dirname, '..', '..')

export interface Host {
  /** The entry address with this launch's token. */
  readonly url: string
  readonly pid: number
  /** Ends it as a flat battery would. */
  kill(): Promise<void>
  stop(): Promise<void>
}

/** A folder that goes away with the test. */
export function recordsFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'evenhand-desk-'))
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) }
}

async function entryUrl(child: ChildProcess): Promise<string> {
  const said: string[] = []
  child.stderr?.on('data', (data) => said.push(String(data)))
  if (child.stdout === null) throw new Error('the host has no output to read')
  const lines = createInterface({ input: child.stdout })
  const ended = once(child, 'exit').then(() => {
    throw new Error(`the host ended before it said where it is:\n${said.join('')}`)
  })
  const found = (async () => {
    for await (const line of lines) {
      const url = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(line)?.[0]
      if (url !== undefined) return url
      said.push(`${line}\n`)
    }
    throw new Error(`the host never said where it is:\n${said.join('')}`)
  })()
  return Promise.race([found, ended])
}

export async function startHost(records: string, extra: readonly string[] = []): Promise<Host> {
  const child = spawn(
    process.execPath,
    [join(root, 'out', 'main', 'browser.js'), '--no-open', '--records', records, ...extra],
    { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, TZ: 'Europe/Helsinki' } },
  )
  const url = await entryUrl(child)
  const ended = once(child, 'exit')
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    if (child.exitCode === null && child.signalCode === null) child.kill(signal)
    await ended
  }
  return { url, pid: child.pid ?? 0, kill: () => end('SIGKILL'), stop: () => end('SIGTERM') }
}
