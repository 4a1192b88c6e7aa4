/** Builds the program into `out/` when its sources are newer than what is there. */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { childEnvironment, fail, requireNode24, root } from './node24.mjs'

const stampFile = join(root, 'out', '.built-from')
/** What the built program is made of. `protocols/library` is read at run time and so isn't. */
const SOURCES = [
  'main',
  'protocols',
  'renderer',
  'electron.vite.config.ts',
  'package-lock.json',
  'package.json',
]

function* filesOf(path) {
  const entry = join(root, path)
  if (!existsSync(entry)) return
  if (!/\.\w+$/.test(path) || path.endsWith('.d')) {
    for (const child of readdirSync(entry, { withFileTypes: true }).sort((a, b) =>
      a.name < b.name ? -1 : 1,
    )) {
      const inner = `${path}/${child.name}`
      if (inner === 'protocols/library') continue
      if (child.isDirectory()) yield* filesOf(inner)
      else yield inner
    }
  } else yield path
}

/** Names, sizes and times of change: reading every file at every start would be felt. */
function sourcesHash() {
  const hash = createHash('sha256')
  for (const source of SOURCES) {
    for (const file of filesOf(source)) {
      const { size, mtimeMs } = statSync(join(root, file))
      hash.update(`${file} ${size} ${mtimeMs}\n`)
    }
  }
  return hash.digest('hex')
}

export function build() {
  const current = sourcesHash()
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === current) return
  // Said and shown on the error stream: the command line's own output has to stay clean.
  console.error('Building the program …')
  const tool = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js')
  const done = spawnSync(requireNode24(), [tool, 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['inherit', 2, 2],
    env: childEnvironment(),
  })
  if (done.status !== 0) {
    fail(
      'The program could not be built.',
      'The message above names the file. If you changed nothing, run `npm ci` and try again.',
    )
  }
  writeFileSync(stampFile, current)
}
