import { describe, expect, test } from 'vitest'
import { files, textOf } from './tree.ts'

const rows = textOf('docs/TIMING.md')
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.startsWith('| What happens'))

/** The test that a row names: the file, and the title in it. */
const named = rows.map((row) => {
  const found = /\| `(tests\/[^`]+)`: (.+) \|$/.exec(row)
  return { row, file: found?.[1] ?? '', title: found?.[2] ?? '' }
})

describe('docs/TIMING.md', () => {
  test('tells what each of the things does that may come between, and names a test for it', () => {
    expect(rows.length).toBeGreaterThan(20)
    expect(named.filter(({ file, title }) => file === '' || title === '')).toEqual([])
  })

  test('names only tests that there are', () => {
    const gone = named.filter(
      ({ file, title }) => !files.includes(file) || !textOf(file).includes(`'${title}'`),
    )
    expect(gone.map(({ row }) => row)).toEqual([])
  })
})
