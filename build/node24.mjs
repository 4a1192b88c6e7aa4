/**
 * Finds a Node 24 to run everything on: the one that runs this, or the one that the install put into
 * node_modules. Node 20 starts the scripts but crashes without a message once the records' native part loads.
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))

const majorOf = (version) => Number.parseInt(version.replace(/^v/, ''), 10)

/** @returns {string | null} path of a Node 24 or newer */
export function findNode24() {
  if (majorOf(process.versions.node) >= 24) return process.execPath
  const local = join(root, 'node_modules', '.bin', process.platform === 'win32' ? 'node.exe' : 'node')
  if (!existsSync(local)) return null
  const asked = spawnSync(local, ['-p', 'process.versions.node'], { encoding: 'utf8' })
  return asked.status === 0 && majorOf(asked.stdout) >= 24 ? local : null
}

/** The environment for a child: our own tools first on its path. */
export function childEnvironment(extra = {}) {
  const bin = join(root, 'node_modules', '.bin')
  return { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH ?? ''}`, ...extra }
}

/** Ends with a sentence and a mend instead of a stack trace. */
export function fail(what, mend) {
  console.error(`\n${what}\n${mend}\n`)
  process.exit(2)
}

export function requireNode24() {
  const found = findNode24()
  if (found) return found
  return fail(
    `Evenhand needs Node 24 to run; this is Node ${process.versions.node}, and the install brought none for ${process.platform} ${process.arch}.`,
    'Install Node 24 or newer (nodejs.org, or your system’s packages), then run the same command again.',
  )
}
