/**
 * `npm test`: installs what is missing and runs every check. Ends with the seconds of each part and one line
 * `N passed, N failed`; a part that is no test run counts as one.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { install } from './install.mjs'
import { build } from './make.mjs'
import { ensureNeeds } from './needs.mjs'
import { childEnvironment, requireNode24, root } from './node24.mjs'

const seconds = []
const counts = { passed: 0, failed: 0 }

function timed(name, work) {
  const began = performance.now()
  const value = work()
  seconds.push([name, (performance.now() - began) / 1000])
  return value
}

function tool(path, args, environment) {
  const done = spawnSync(requireNode24(), [join(root, 'node_modules', path), ...args], {
    cwd: root,
    stdio: 'inherit',
    env: childEnvironment({ NO_COLOR: '1', ...environment }),
  })
  return done.status === 0
}

function check(name, path, args) {
  const good = timed(name, () => tool(path, args))
  counts[good ? 'passed' : 'failed'] += 1
  if (!good) console.error(`\n${name}: see the lines above for what to mend.\n`)
}

/** Runs a project of the test runner and adds what it counted; a run that counted nothing has failed. */
function tests(project, environment) {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-test-'))
  const file = join(folder, 'counts.json')
  const good = timed(`tests (${project})`, () =>
    tool(
      'vitest/vitest.mjs',
      ['run', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${file}`],
      environment,
    ),
  )
  let report = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0 }
  try {
    report = JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    console.error(`The ${project} tests left no count.`)
  }
  rmSync(folder, { recursive: true, force: true })
  const parked = report.numPendingTests + report.numTodoTests
  counts.passed += report.numPassedTests
  counts.failed += report.numFailedTests + parked
  if (!good && report.numFailedTests === 0) counts.failed += 1
  if (good && report.numPassedTests === 0) counts.failed += 1
}

const only = process.argv.slice(2)
const wanted = (part) => only.length === 0 || only.includes(part)

timed('install', install)
const needs = timed('system packages', ensureNeeds)
if (wanted('static')) {
  check('format', '@biomejs/biome/bin/biome', ['format', '.'])
  check('lint', 'oxlint/bin/oxlint', ['--deny-warnings'])
  check('types', 'typescript/bin/tsc', [])
  check('unused code', 'knip/bin/knip.js', [])
}
timed('build', build)
if (wanted('node')) tests('node', needs)
if (wanted('desk')) tests('desk', needs)

console.log('')
for (const [name, taken] of seconds) console.log(`${taken.toFixed(1).padStart(7)} s  ${name}`)
console.log(`\n${counts.passed} passed, ${counts.failed} failed`)
process.exit(counts.failed === 0 && counts.passed > 0 ? 0 : 1)
