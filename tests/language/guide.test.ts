import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'
import { NODE_SCHEMAS, STEP_KINDS } from '../../protocols/language/schema/kinds.ts'
import { folderAt, folderOf } from './folders.ts'

const guide = readFileSync(join(import.meta.dirname, '../../protocols/language/GUIDE.md'), 'utf8')
const fenced = (language: string): string =>
  new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(guide)?.[1] ?? ''

test('the guide’s protocol is read without a word', () => {
  const figure = folderAt(`${import.meta.dirname}/corpus/sound/full`).files.get('figures/table.svg') ?? ''
  const folder = folderOf(fenced('yaml'), { 'norms/adults.csv': fenced('csv'), 'figures/table.svg': figure })
  const { protocol, diagnostics } = readProtocol(folder)
  expect(diagnostics).toEqual([])
  expect(protocol).not.toBeNull()
})

test('the guide names every kind of step and section, with all of its own keys', () => {
  const table = guide.slice(guide.indexOf('| kind |'), guide.indexOf('Every table also has'))
  for (const kind of NODE_SCHEMAS.keys()) expect(table).toContain(`\`${kind}\``)
  for (const { kind, keys } of STEP_KINDS.values()) {
    const row = table.split('\n').find((line) => line.includes(`\`${kind}\``)) ?? ''
    for (const key of Object.keys(keys.shape)) expect(row).toContain(`\`${key}\``)
  }
})
