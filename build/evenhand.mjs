#!/usr/bin/env node
/**
 * The command line's launcher: builds what has changed where this is a checkout, then runs the built program on
 * Node 24, in this process where this is one.
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build } from './make.mjs'
import { childEnvironment, fail, requireNode24, root } from './node24.mjs'

const program = join(root, 'out', 'main', 'evenhand.js')
const isCheckout = existsSync(join(root, 'electron.vite.config.ts'))

if (isCheckout && !existsSync(join(root, 'node_modules', 'electron-vite')))
  fail(
    'The packages that this program is built with are not installed.',
    'Run `npm ci` here, then the same command again.',
  )
if (isCheckout) build()
if (!existsSync(program)) fail('The built program is missing.', 'Install the package again.')

const node = requireNode24()
if (node === process.execPath) {
  process.argv[1] = program
  await import(pathToFileURL(program).href)
} else {
  const done = spawnSync(node, [program, ...process.argv.slice(2)], {
    stdio: 'inherit',
    env: childEnvironment(),
  })
  process.exit(done.status ?? 2)
}
