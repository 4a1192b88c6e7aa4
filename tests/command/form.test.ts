import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { evenhand, jsonOf } from './evenhand.ts'

const folder = mkdtempSync(join(tmpdir(), 'evenhand-form-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('evenhand form', () => {
  test('writes a PDF and says where, in words and as JSON', async () => {
    const file = join(folder, 'form.pdf')
    const { code, out } = await evenhand('form', 'box_and_block', '-o', file)
    expect(code).toBe(0)
    expect(out).toMatch(/form\.pdf: \d+ pages\.$/)
    expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-')
    const told = jsonOf(await evenhand('form', 'box_and_block', '--output', file, '--json'))
    expect(told).toEqual({ file, pages: expect.any(Number) })
  })

  test('a folder that isn’t there, a folder as file and no file at all end with 2 and a mend', async () => {
    for (const [given, words] of [
      [['-o', join(folder, 'nowhere', 'x.pdf')], 'Make it first'],
      [['-o', folder], 'Name a file in it'],
      [[], 'evenhand form PROTOCOL -o FILE.pdf'],
      [['-o'], 'evenhand form PROTOCOL -o FILE.pdf'],
    ] as const) {
      const { code, err } = await evenhand('form', 'box_and_block', ...given)
      expect([given, code]).toEqual([given, 2])
      expect(err).toContain(words)
    }
  })

  test('a faulty protocol is refused with what is wrong with it, and nothing is written', async () => {
    const faulty = join(folder, 'faulty.yaml')
    writeFileSync(faulty, 'evenhand: 1\nid: faulty\n')
    const { code, err } = await evenhand('form', faulty, '-o', join(folder, 'faulty.pdf'))
    expect(code).toBe(2)
    expect(err).toMatch(/:\d+:\d+: error /)
    expect(existsSync(join(folder, 'faulty.pdf'))).toBe(false)
  })
})
