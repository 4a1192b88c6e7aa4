/** Brings node_modules to what package-lock.json says, and nothing when it is there already. */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fail, root } from './node24.mjs'

const stampFile = join(root, 'node_modules', '.evenhand-install')

function wanted() {
  const hash = createHash('sha256')
  for (const file of ['package.json', 'package-lock.json']) hash.update(readFileSync(join(root, file)))
  return hash.digest('hex')
}

/** How to call npm: the npm that started us where there is one, so that no other version rewrites anything. */
function npmCommand() {
  const script = process.env.npm_execpath
  if (script?.endsWith('.js')) return [process.env.npm_node_execpath ?? process.execPath, [script]]
  return [process.platform === 'win32' ? 'npm.cmd' : 'npm', []]
}

export function install() {
  const [major = 0] = process.versions.node.split('.').map(Number)
  if (major < 20) {
    fail(
      `Evenhand needs Node 20 or newer to install; this is Node ${process.versions.node}.`,
      'Install a newer Node (nodejs.org, or your system’s packages), then run the same command again.',
    )
  }
  const target = wanted()
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === target) return
  console.log('Installing the packages that package-lock.json names (about half a minute) …')
  const [command, first] = npmCommand()
  const done = spawnSync(command, [...first, 'ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32' && first.length === 0,
  })
  if (done.status !== 0) {
    fail(
      'The packages could not be installed.',
      'Look at npm’s message above; often the registry was out of reach. Run the same command again once it is.',
    )
  }
  writeFileSync(stampFile, target)
}
