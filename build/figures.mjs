/**
 * `npm run -s figures`: draws the figures of the library anew from build/figures.
 * `npm run -s figures -- --sheet FILE.html`: all of them on one page instead, for both hands, to be looked at.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { runnerImport } from 'vite'
import { fail, root } from './node24.mjs'

const { module } = await runnerImport(join(root, 'build/figures/index.ts'), {
  root,
  configFile: false,
  logLevel: 'warn',
})
const [option, target, ...rest] = process.argv.slice(2)
if (option === undefined) {
  for (const [name, drawings] of module.drawn()) {
    const folder = join(root, 'protocols', 'library', name, 'figures')
    rmSync(folder, { recursive: true, force: true })
    mkdirSync(folder, { recursive: true })
    for (const [figure, svg] of drawings) writeFileSync(join(folder, `${figure}.svg`), svg)
  }
} else if (option === '--sheet' && target !== undefined && rest.length === 0) {
  const file = resolve(target)
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, module.contactSheet())
} else fail(`There is no option "${option}".`, 'Say nothing, or --sheet FILE.html.')
