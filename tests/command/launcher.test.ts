import { spawnSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { resolve } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { buildProgram } from '../hosts/program.ts'

beforeAll(buildProgram, 120_000)

const elsewhere = mkdtempSync(`${tmpdir()}/evenhand-launch-`)
const launch = (words: readonly string[], more: Record<string, string> = {}) =>
  spawnSync(process.execPath, [resolve('build/evenhand.mjs'), ...words], {
    cwd: elsewhere,
    encoding: 'utf8',
    env: { ...process.env, ...more },
  })

describe('the launcher of the command line', () => {
  test('passes words, output and exit code on, from any folder', () => {
    const good = launch(['check', 'grip_strength', '--json'])
    expect([good.status, good.stderr]).toEqual([0, ''])
    expect(JSON.parse(good.stdout)).toBeInstanceOf(Array)
    const bad = launch(['check', 'nowhere'])
    expect([bad.status, bad.stdout]).toEqual([2, ''])
    expect(bad.stderr).toContain('nowhere')
  })

  test('a reader that stops after the first line ends it without a word', () => {
    const piped = spawnSync(
      'bash',
      [
        '-c',
        '"$0" "$1" schema protocol | head -1; echo "${PIPESTATUS[0]}"',
        process.execPath,
        resolve('build/evenhand.mjs'),
      ],
      { cwd: elsewhere, encoding: 'utf8' },
    )
    expect([piped.stdout, piped.stderr]).toEqual(['{\n0\n', ''])
  })

  test('a path is meant from where the user stood when npm ran it from the project', () => {
    const { status } = launch(['check', 'grip_strength'], { INIT_CWD: resolve('protocols/library') })
    expect(status).toBe(0)
  })
})
