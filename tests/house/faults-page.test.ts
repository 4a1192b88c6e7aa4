import { expect, test } from 'vitest'
import { textOf } from './tree.ts'

test('every line of the page of faults names a test that is there', () => {
  const lines = textOf('docs/FAULTS.md')
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('| fault'))
  expect(lines.length).toBeGreaterThan(20)
  for (const line of lines) {
    const [, file = '', title = ''] = /\| `(tests\/[^`]+)` ([^|]+?) \|$/.exec(line) ?? []
    expect([
      line,
      title !== '' && new RegExp(`['"\`]${title.replace(/[.*+?^${}()[\]\\]/g, '\\$&')}`).test(textOf(file)),
    ]).toEqual([line, true])
  }
})
