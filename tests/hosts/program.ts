/** The built program as a process of its own. */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Client, createClient } from '../../main/contract/client.ts'
import { httpTransport } from '../../main/contract/transport.ts'
import { enter } from './browser-end.ts'

/** Where the built program lies: in this checkout, or in a package that a test has made. */
const BUILT = resolve('out/main')
const PATIENCE = 15_000

/** Builds what the sources say, if that isn't there already. */
export async function buildProgram(): Promise<void> {
  const { build } = (await import(pathToFileURL(resolve('build/make.mjs')).href)) as { build(): void }
  build()
}

export const newRecords = (): string => join(mkdtempSync(join(tmpdir(), 'evenhand-program-')), 'records')

export interface Running {
  readonly child: ChildProcess
  readonly entry: string
  readonly client: Client
  /** Ends it and gives its exit code; null where a signal ended it. */
  end(signal: NodeJS.Signals): Promise<number | null>
  output(): string
}

export interface Ended {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

function launch(file: string, words: readonly string[], before: readonly string[]) {
  const child = spawn(process.execPath, [...before, file, ...words], {
    env: { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '', NO_COLOR: '1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const heard = { out: '', err: '' }
  child.stdout.on('data', (part: Buffer) => {
    heard.out += part.toString()
  })
  child.stderr.on('data', (part: Buffer) => {
    heard.err += part.toString()
  })
  const ended = new Promise<number | null>((done) => child.on('close', (code) => done(code)))
  return { child, heard, ended }
}

/** Runs something to its end. */
export async function run(
  file: string,
  words: readonly string[],
  before: readonly string[] = [],
): Promise<Ended> {
  const { child, heard, ended } = launch(join(BUILT, file), words, before)
  const timer = setTimeout(() => child.kill('SIGKILL'), PATIENCE)
  const code = await ended
  clearTimeout(timer)
  return { code, ...heard }
}

/** Starts the browser host that lies in `built` and enters by the address it prints. */
export async function start(
  words: readonly string[],
  { before = [], built = BUILT }: { readonly before?: readonly string[]; readonly built?: string } = {},
): Promise<Running> {
  const { child, heard, ended } = launch(join(built, 'browser.js'), [...words, '--no-open'], before)
  const entry = await new Promise<string>((found, failed) => {
    const timer = setTimeout(() => failed(new Error(`It doesn't start: ${heard.out}${heard.err}`)), PATIENCE)
    const look = () => {
      const [address] = /http:\/\/\S+/.exec(heard.out) ?? []
      if (address) found(address)
      if (address || child.exitCode !== null) clearTimeout(timer)
    }
    child.stdout?.on('data', look)
    child.on('exit', () => failed(new Error(`It ended: ${heard.out}${heard.err}`)))
  })
  return {
    child,
    entry,
    client: createClient(httpTransport(await enter(entry))),
    end(signal) {
      child.kill(signal)
      return ended
    },
    output: () => `${heard.out}${heard.err}`,
  }
}
