/** Xvfb: an X server whose screen is in memory only, on a display number of its own. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync } from 'node:fs'

export interface XServer {
  readonly display: number
  stop(): Promise<void>
}

function freeDisplay(): number {
  for (let display = 71; ; display += 1) {
    if (!existsSync(`/tmp/.X11-unix/X${display}`) && !existsSync(`/tmp/.X${display}-lock`)) return display
  }
}

export async function startXServer(): Promise<XServer> {
  const display = freeDisplay()
  const options = ['-screen', '0', '1280x900x24', '-ac', '-nolisten', 'tcp']
  const server = spawn('Xvfb', [`:${display}`, ...options], { stdio: 'ignore' })
  for (let turn = 0; !existsSync(`/tmp/.X11-unix/X${display}`); turn += 1) {
    if (turn === 100 || server.exitCode !== null) throw new Error('Xvfb did not start')
    await new Promise((done) => setTimeout(done, 100))
  }
  return {
    display,
    stop: async () => {
      const ended = once(server, 'exit')
      server.kill()
      await ended
    },
  }
}
