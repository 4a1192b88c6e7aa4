import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parse, stringify } from 'yaml'
import { manualPages, manualParts } from '../../protocols/language/manual/index.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { CHECKS } from '../../protocols/language/run-checks.ts'
import { folderAt, folderOf } from './folders.ts'

const FOLDER = join(import.meta.dirname, '../../docs/manual')
const parts = manualParts().map((part) => ({ name: `${part.path} ${part.title}`, ...part }))

describe('the manual is whole', () => {
  test('the pages in docs/manual are the ones that its sources make: run node build/manual.mjs', () => {
    const pages = manualPages()
    const kept = readdirSync(FOLDER, { recursive: true })
      .map((name) => String(name).replaceAll('\\', '/'))
      .filter((name) => statSync(join(FOLDER, name)).isFile())
    expect(kept.toSorted()).toEqual([...pages.keys()].toSorted())
    for (const [path, text] of pages) expect(readFileSync(join(FOLDER, path), 'utf8')).toBe(text)
  })

  test.each(parts)('$name says what it is about, has a sentence for each key and for no other', (part) => {
    const { page, keys } = part
    expect(page.about.length + page.keys.size).toBeGreaterThan(0)
    expect([...page.keys.keys()].toSorted()).toEqual(keys.map(({ path }) => path).toSorted())
    for (const sentence of page.keys.values()) expect(sentence).toMatch(/^['`A-Z].*\.$/)
  })

  test.each(parts)('$name has an example with each of its keys', ({ page, keys }) => {
    const written = keysIn(parse(page.example))
    const missing = keys.map(({ path }) => path.split('.').at(-1) ?? '').filter((key) => !written.has(key))
    expect(missing).toEqual([])
  })

  test.each(parts)('the example of $name is read without an error', ({ page }) => {
    const { protocol, diagnostics } = readProtocol(withExample(page.example))
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(protocol).not.toBeNull()
  })

  test('every check has its chapter, with an example and what to write instead', () => {
    const page = manualPages().get('problems.md') ?? ''
    for (const { code, severity } of CHECKS.values()) {
      const [, chapter = ''] = page.split(`### \`${code}\` (${severity})`)
      const own = chapter.split('\n### ')[0] ?? ''
      expect({
        code,
        has: ['Why it matters: ', 'Example:', 'Instead:'].filter((part) => !own.includes(part)),
      }).toEqual({
        code,
        has: [],
      })
    }
  })

  test('every function has its sentence', () => {
    const rows =
      (manualPages().get('expressions.md') ?? '').split('| function |')[1]?.trim().split('\n').slice(2) ?? []
    expect(rows.length).toBeGreaterThan(15)
    for (const row of rows) expect(row).toMatch(/^\| `\w+` \| `.+` \| [A-Z].*[.:].* \|$/)
  })
})

function keysIn(value: unknown): ReadonlySet<string> {
  if (Array.isArray(value)) return new Set(value.flatMap((item) => [...keysIn(item)]))
  if (typeof value !== 'object' || value === null) return new Set()
  return new Set(Object.entries(value).flatMap(([key, inside]) => [key, ...keysIn(inside)]))
}

const BASE = `
evenhand: 1
id: ring_board
version: 1.0.0
language: en
title: Ring board
about: { purpose: How fast one hand puts six rings on their pegs., minutes: [2, 5], suits: Adults who can hold a ring. }
precautions: [{ id: pain, ask: Does the hand hurt at rest? }]
sources: { demo: { cite: Invented for the manual., seen: seen } }
kit: { board: { text: Board with six pegs, registered: true } }
steps:
  - { kit: ready, of: [board], text: Board at the midline. }
  - for-each: hand
    in: hands
    order: [dominant-first, right-first]
    steps:
      - { timed: run, text: As fast as you can., start: { said: go }, stop: { seen: last ring home } }
scores:
  - { score: best, title: Best run, each: hand, value: min(run.time), unit: s, better: lower, decimals: 1 }
`

const FIGURE = folderAt(join(import.meta.dirname, 'corpus/sound/full')).files.get('figures/table.svg') ?? ''
const TABLES = {
  'norms/adults.csv': 'sex,age_min,age_max,hand,n,mean,sd,provenance\nany,20,59,any,40,16.1,1.9,seen\n',
  'norms/bands.csv': 'from,below,band,provenance\n,16,quick,seen\n16,,slow,seen\n',
}

type Keyed = Readonly<Record<string, unknown>>

/** The example within a protocol of its own: lists follow those of the base, maps are joined, values replace. */
function withExample(example: string) {
  const base = parse(BASE) as Keyed
  const merged: Record<string, unknown> = { ...base }
  for (const [key, value] of Object.entries((parse(example) ?? {}) as Keyed)) {
    const before = base[key]
    if (Array.isArray(value) && Array.isArray(before) && key !== 'precautions') {
      merged[key] = key === 'steps' ? [...value, ...before] : [...before, ...value]
    } else if (typeof value === 'object' && !Array.isArray(value)) {
      merged[key] = { ...(before as Keyed | undefined), ...(value as Keyed) }
    } else merged[key] = value
  }
  return folderOf(stringify(merged), { 'figures/table.svg': FIGURE, ...TABLES })
}
