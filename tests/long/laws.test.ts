/** The property tests once more, each time with cases that no run drew before: `npm run long -- laws`. */
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const ROUNDS = 5
const root = join(import.meta.dirname, '../..')

const files = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.test\.tsx?$/.test(file) && !/^(long|desk)/.test(file))
  .filter((file) => readFileSync(join(root, 'tests', file), 'utf8').includes("from 'fast-check'"))
  .map((file) => `tests/${file}`)

test('the laws hold for cases drawn anew', () => {
  expect(files.length).toBeGreaterThan(20)
  for (let round = 0; round < ROUNDS; round += 1) {
    const seed = Math.floor(Math.random() * 2 ** 31)
    console.log(`EVENHAND_SEED=${seed}`)
    const { status } = spawnSync(
      process.execPath,
      [
        join(root, 'node_modules/vitest/vitest.mjs'),
        'run',
        '--project',
        'node',
        '--reporter=dot',
        '--testTimeout=600000',
        ...files,
      ],
      { cwd: root, stdio: 'inherit', env: { ...process.env, EVENHAND_SEED: String(seed) } },
    )
    expect(status).toBe(0)
  }
})
