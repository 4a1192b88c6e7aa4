import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'

const PROJECT = ['package.json', 'package-lock.json'] as const

/** Runs a script of the build as if an older Node did. */
function onNode(version: string, script: string) {
  const pretence = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '${version}' } })`
  const before = ['--import', `data:text/javascript,${encodeURIComponent(pretence)}`]
  return spawnSync(process.execPath, [...before, script, '--no-open'], { encoding: 'utf8', timeout: 15_000 })
}

/** The scripts of the build in a checkout whose packages are installed as far as a stamp says, with no Node among them. */
function checkoutWithoutNode(): string {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-old-node-'))
  cpSync('build', join(folder, 'build'), { recursive: true })
  for (const file of PROJECT) cpSync(file, join(folder, file))
  mkdirSync(join(folder, 'node_modules'))
  const hash = createHash('sha256')
  for (const file of PROJECT) hash.update(readFileSync(file))
  writeFileSync(join(folder, 'node_modules', '.evenhand-install'), hash.digest('hex'))
  return folder
}

describe('a Node that is too old', () => {
  test.each(['start.mjs', 'test.mjs'])(
    'is said by %s with what to do, before anything is fetched',
    (script) => {
      for (const version of ['18.20.4', '16.0.0']) {
        const { status, stdout, stderr } = onNode(version, resolve('build', script))
        expect([status, stdout]).toEqual([2, ''])
        expect(stderr).toContain(`needs Node 20 or newer to install; this is Node ${version}.`)
        expect(stderr).toContain('Install a newer Node')
        expect(stderr).not.toMatch(/^ {4}at /m)
      }
    },
  )

  test('to run on, where the install brought no newer one, is said as well', () => {
    const { status, stderr } = onNode('20.0.0', join(checkoutWithoutNode(), 'build', 'start.mjs'))
    expect(status).toBe(2)
    expect(stderr).toContain('needs Node 24 to run; this is Node 20.0.0')
    expect(stderr).toContain('Install Node 24 or newer')
    expect(stderr).not.toMatch(/^ {4}at /m)
  })
})
