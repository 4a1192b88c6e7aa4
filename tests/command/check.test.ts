import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { evenhand, jsonOf } from './evenhand.ts'

let folder = ''
let faulty = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenhand-check-'))
  faulty = join(folder, 'nine_hole_peg')
  cpSync('protocols/library/nine_hole_peg', faulty, { recursive: true })
  const file = join(faulty, 'protocol.yaml')
  writeFileSync(file, readFileSync(file, 'utf8').replace(/^version: .*$/m, 'version: soon'))
})

const lineOfVersion = () =>
  readFileSync(join(faulty, 'protocol.yaml'), 'utf8')
    .split('\n')
    .findIndex((line) => line.startsWith('version:')) + 1

describe('evenhand check', () => {
  test('the library has no error', async () => {
    const ran = await evenhand('check', 'protocols/library', '--json')
    const severe = (jsonOf(ran) as { severity: string }[]).filter(({ severity }) => severity !== 'advice')
    expect([ran.code, severe]).toEqual([0, []])
  })

  test('a problem names file, line, column, code and mend, and ends with 1', async () => {
    const ran = await evenhand('check', faulty, '--json')
    expect(ran.code).toBe(1)
    const [first] = jsonOf(ran) as Record<string, unknown>[]
    expect(Object.keys(first ?? {})).toEqual([
      'code',
      'severity',
      'file',
      'line',
      'column',
      'message',
      'mend',
    ])
    const place = { file: `${faulty}/protocol.yaml`, line: lineOfVersion(), column: 10 }
    expect(first).toMatchObject({ severity: 'error', ...place })
  })

  test('people read the same with the place first', async () => {
    const { out, code } = await evenhand('check', faulty)
    expect(code).toBe(1)
    expect(out).toContain(`${faulty}/protocol.yaml:${lineOfVersion()}:10: error`)
    expect(out).toContain('1 error')
  })

  test('a protocol file of any name is read in its folder, and named as it was given', async () => {
    const file = join(faulty, 'draft.yaml')
    writeFileSync(file, readFileSync(join(faulty, 'protocol.yaml'), 'utf8'))
    const [first] = jsonOf(await evenhand('check', file, '--json')) as { file: string }[]
    expect(first?.file).toBe(file)
  })

  test('a loose file is in nobody’s folder, and a folder of loose files is read whole', async () => {
    const loose = mkdtempSync(join(tmpdir(), 'evenhand-loose-'))
    const text = readFileSync('protocols/library/nine_hole_peg/protocol.yaml', 'utf8')
    writeFileSync(join(loose, 'first.yaml'), text.replace(/^evenhand: 1$/m, 'evenhand: 2'))
    writeFileSync(join(loose, 'second.yaml'), text.replace(/^evenhand: 1$/m, 'evenhand: 3'))
    const problems = jsonOf(await evenhand('check', loose, '--json')) as { file: string; code: string }[]
    expect(problems.map(({ file, code }) => [file, code])).toEqual([
      [`${loose}/first.yaml`, 'language_version'],
      [`${loose}/second.yaml`, 'language_version'],
    ])
  })

  test('a file that is no text is one problem', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'evenhand-bytes-')), 'bytes.yaml')
    writeFileSync(file, Buffer.from([0xff, 0xfe, 0x00, 0x80]))
    const problems = jsonOf(await evenhand('check', file, '--json')) as { code: string }[]
    expect(problems.map(({ code }) => code)).toEqual(['file_not_text'])
  })

  test('several paths and folders of folders are taken together', async () => {
    const ran = await evenhand('check', 'protocols/library/nine_hole_peg', folder)
    expect(ran.code).toBe(1)
    expect(ran.out).toContain('2 protocols')
  })

  test('where there is nothing to check it says so and ends with 2', async () => {
    const missing = await evenhand('check', join(folder, 'nowhere'))
    expect([missing.code, missing.out]).toEqual([2, ''])
    expect(missing.err).toContain('nowhere')
    const empty = await evenhand('check', join(faulty, 'norms'))
    expect(empty.code).toBe(2)
  })
})
