/** `npm run long -- NAME`: runs one of the long checks in tests/long, with figures on standard output. */
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { install } from './install.mjs'
import { build } from './make.mjs'
import { ensureNeeds, ensureXServer } from './needs.mjs'
import { childEnvironment, fail, requireNode24, root } from './node24.mjs'

const names = readdirSync(join(root, 'tests', 'long'))
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => file.replace('.test.ts', ''))
const [name] = process.argv.slice(2)
if (!names.includes(name)) fail(`There is no long check "${name ?? ''}".`, `Say one of: ${names.join(', ')}.`)

install()
const needs = ensureNeeds()
if (readFileSync(join(root, 'tests', 'long', `${name}.test.ts`), 'utf8').includes('./x-')) ensureXServer()
build()
const done = spawnSync(
  requireNode24(),
  [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--project', 'long', `tests/long/${name}.test.ts`],
  { cwd: root, stdio: 'inherit', env: childEnvironment({ NO_COLOR: '1', EVENHAND_WHOLE: '1', ...needs }) },
)
process.exit(done.status ?? 1)
