/**
 * `npm start`: installs what is missing, builds what has changed and opens the program: the Electron window
 * where its runtime is at hand, the browser host on 127.0.0.1 otherwise.
 */
import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { install } from './install.mjs'
import { build } from './make.mjs'
import { childEnvironment, requireNode24, root } from './node24.mjs'

/** Electron's program when its runtime was downloaded; `require('electron')` would start a download. */
function electronProgram() {
  const folder = join(root, 'node_modules', 'electron')
  const nameFile = join(folder, 'path.txt')
  if (!existsSync(nameFile)) return null
  const name = readFileSync(nameFile, 'utf8')
  const override = process.env.ELECTRON_OVERRIDE_DIST_PATH
  const program = override ? join(override, name) : join(folder, 'dist', name)
  return existsSync(program) ? program : null
}

install()
build()

const wishes = process.argv.slice(2)
const browserAsked = wishes.includes('--browser')
const given = wishes.filter((wish) => wish !== '--browser')
const electron = browserAsked ? null : electronProgram()
const [program, first] = electron
  ? [electron, [root]]
  : [requireNode24(), [join(root, 'out', 'main', 'browser.js')]]
console.log(electron ? 'Opening the window …' : 'Opening Evenhand in your browser …')
// Compiled code is kept from one start to the next: the host's bundle is large, and this halves what it costs to load.
const cache = { NODE_COMPILE_CACHE: join(root, 'node_modules', '.cache', 'evenhand') }
const child = spawn(program, [...first, ...given], { stdio: 'inherit', env: childEnvironment(cache) })
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
child.on('exit', (code) => process.exit(code ?? 0))
