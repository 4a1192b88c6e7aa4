/** Another process that writes records, to be killed or to be met. What it says goes to a file, so a kill loses none. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { closeSync, openSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { onTestFinished } from 'vitest'
import { folder } from './clinic.ts'

const SCRIPT = join(import.meta.dirname, 'writer-process.mjs')

interface Writer {
  readonly child: ChildProcess
  readonly ended: Promise<unknown>
  said(): string[]
}

function started(args: readonly string[], uid: number | undefined): Writer {
  const path = join(folder(), 'said')
  const output = openSync(path, 'w')
  const child = spawn(process.execPath, [SCRIPT, ...args], {
    stdio: ['ignore', output, 'inherit'],
    ...(uid === undefined ? {} : { uid }),
  })
  closeSync(output)
  onTestFinished(() => {
    child.kill('SIGKILL')
  })
  // A line that the kill cut off was not said.
  const said = () => readFileSync(path, 'utf8').split('\n').slice(0, -1)
  return { child, ended: once(child, 'exit'), said }
}

/** Runs a writer to its end. @returns what it said, a line each */
export async function runWriter(args: readonly string[], uid?: number): Promise<string[]> {
  const writer = started(args, uid)
  await writer.ended
  return writer.said()
}

/** Starts a writer and waits until it has acknowledged its first events. */
export async function startWriter(args: readonly string[]) {
  const { child, ended, said } = started(args, undefined)
  while (said().length === 0 && child.exitCode === null) await wait(2)
  return {
    pid: child.pid ?? 0,
    said,
    /** Kills it as a power cut would. */
    async kill() {
      child.kill('SIGKILL')
      await ended
    },
  }
}
