/** `npm run bench`: ratios against baselines, all in one run. `--json`: one object a line. */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { install } from './install.mjs'
import { build } from './make.mjs'
import { ensureNeeds } from './needs.mjs'
import { childEnvironment, fail, requireNode24, root } from './node24.mjs'

const json = process.argv.includes('--json')
install()
const needs = ensureNeeds()
build()

const folder = mkdtempSync(join(tmpdir(), 'evenhand-bench-'))
const file = join(folder, 'figures.jsonl')
const done = spawnSync(
  requireNode24(),
  [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--project', 'bench', '--reporter=dot'],
  {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: childEnvironment({ NO_COLOR: '1', EVENHAND_FIGURES: file, ...needs }),
  },
)
const lines = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : []
rmSync(folder, { recursive: true, force: true })
if (lines.length === 0 || lines[0] === '') {
  fail(
    'The benchmarks left no figures.',
    'Run `npm run -s vitest -- run --project bench` to see what stopped them.',
  )
}
if (json) console.log(lines.join('\n'))
else {
  console.log(`${'what'.padEnd(72)} ${'ratio'.padStart(7)}  ${'bar'.padEnd(8)} holds`)
  for (const { name, ratio, bar, holds } of lines.map((line) => JSON.parse(line))) {
    console.log(
      `${name.padEnd(72)} ${ratio.toFixed(2).padStart(7)}  ${bar.padEnd(8)} ${holds ? 'yes' : 'NO'}`,
    )
  }
}
const held = lines.every((line) => JSON.parse(line).holds)
process.exit(done.status === 0 && held ? 0 : 1)
