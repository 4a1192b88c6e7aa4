/**
 * `npm run -s standards`: which of the numbered checks (tests/standards.csv) have a test that carries their id
 * in its title, and which don't yet. Exits 1 when one that is due now has none.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './node24.mjs'

/** @returns {{ id: string, due: string, holds: string, tests: string[] }[]} */
export function standards() {
  const lines = readFileSync(join(root, 'tests', 'standards.csv'), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
  const rows = lines.map((line) => {
    const [, id, due, holds] = /^([^,]+),([^,]+),"(.*)"$/.exec(line) ?? []
    return { id, due, holds, tests: [] }
  })
  const files = readdirSync(join(root, 'tests'), { recursive: true }).map(String)
  for (const file of files.filter((name) => /\.test\.tsx?$/.test(name)).sort()) {
    const text = readFileSync(join(root, 'tests', file), 'utf8')
    // An id counts where a test's title begins with it, also as one of several: `STD-INT-1, STD-INT-4: …`.
    for (const [, title] of text.matchAll(
      /\b(?:test|it|describe)(?:\.each\([\s\S]*?\))?\(\s*['"`]((?:STD-[A-Z0-9]+-\d+[,: ]*)+)/g,
    )) {
      for (const id of title.match(/STD-[A-Z0-9]+-\d+/g) ?? []) {
        rows.find((row) => row.id === id)?.tests.push(`tests/${file}`)
      }
    }
  }
  return rows
}

if (import.meta.url === `file://${process.argv[1]}`) {
  const rows = standards()
  for (const { id, due, holds, tests } of rows) {
    const where =
      tests.length > 0 ? [...new Set(tests)].join(' ') : due === 'now' ? 'NO TEST, and it is due' : 'not yet'
    console.log(`${id.padEnd(12)} ${holds}\n${' '.repeat(13)}${where}`)
  }
  const owed = rows.filter(({ due, tests }) => due === 'now' && tests.length === 0)
  console.log(
    `\n${rows.filter(({ tests }) => tests.length > 0).length} of ${rows.length} have a test; ${owed.length} due and missing.`,
  )
  process.exit(owed.length === 0 ? 0 : 1)
}
