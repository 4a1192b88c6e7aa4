import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, test } from 'vitest'
import { folderNames, readFolder } from '../../main/protocol-folders.ts'

let root = ''
const write = (path: string, text: string | Buffer) => {
  const file = join(root, path)
  mkdirSync(join(file, '..'), { recursive: true })
  writeFileSync(file, text)
}
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'evenhand-folders-'))
  write('ring_board/protocol.yaml', 'evenhand: 1\n')
  write('ring_board/norms/adults.csv', 'sex\n')
  write('ring_board/words/de.yaml', 'language: de\n')
  write('ring_board/figures/board.svg', '<svg/>')
})
const read = () => readFolder(join(root, 'ring_board'), 'ring_board')

describe('a protocol’s folder on disk', () => {
  test('is read whole: the protocol, norms, words and figures, and nothing else', () => {
    write('ring_board/notes.txt', 'mine')
    write('ring_board/norms/adults.xlsx', 'x')
    write('ring_board/.git/config', 'x')
    expect([...read().folder.files.keys()].sort()).toEqual([
      'figures/board.svg',
      'norms/adults.csv',
      'protocol.yaml',
      'words/de.yaml',
    ])
    expect(read().problems).toEqual([])
  })

  test('has a hash that changes with any text and with nothing else', () => {
    const before = read().hash
    write('ring_board/notes.txt', 'mine')
    expect(read().hash).toBe(before)
    write('ring_board/norms/adults.csv', 'sex,n\n')
    expect(read().hash).not.toBe(before)
  })

  test('a link is not followed, whatever it leads to', () => {
    write('secret.csv', 'secret')
    symlinkSync(join(root, 'secret.csv'), join(root, 'ring_board', 'norms', 'link.csv'))
    expect(read().folder.files.has('norms/link.csv')).toBe(false)
    expect(read().problems).toMatchObject([{ code: 'file_not_a_file', file: 'ring_board/norms/link.csv' }])
  })

  test('what is too large or no text is a problem with a mend, not an error', () => {
    write('ring_board/norms/huge.csv', Buffer.alloc(2_000_001, 'x'))
    write('ring_board/norms/latin.csv', Buffer.from([0x6d, 0xe4, 0x6e]))
    expect(read().problems.map(({ code }) => code)).toEqual(['file_too_large', 'file_not_text'])
    for (const { mend, message } of read().problems) expect([mend, message]).not.toContain('')
  })

  test('the folders under a root are found by listing; a missing root has none', () => {
    write('anchor/protocol.yaml', 'evenhand: 1\n')
    write('.hidden/protocol.yaml', 'evenhand: 1\n')
    write('SOURCES.md', '')
    expect(folderNames(root)).toEqual(['anchor', 'ring_board'])
    expect(folderNames(join(root, 'nowhere'))).toEqual([])
  })
})
