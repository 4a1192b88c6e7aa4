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

/** What a part of the guide shows stands for a part of a protocol: the rest is what every protocol has. */
const PARTS = [...guide.matchAll(/```yaml\n(steps:\n[\s\S]*?)```/g)].map(([, part = '']) => part)

test.each(PARTS.map((part) => [part.split('\n')[1]?.trim() ?? '', part]))(
  'the guide’s part with %s is read without a word',
  (_first, part) => {
    const [steps = '', rest = ''] = part.split(/^(?=scores:)/m)
    const whole = `evenhand: 1
id: part
version: 1.0.0
language: en
title: Part
about: { purpose: To show a part., minutes: [1, 2], suits: Readers. }
precautions: [{ id: pain, ask: Does the hand hurt at rest? }]
steps:
  - { position: seated, text: Seated at the table. }
  - { instruct: explain, text: Do as you are told. }
${steps.replace('steps:\n', '')}${rest}`
    const { diagnostics } = readProtocol(folderOf(whole, {}))
    expect(diagnostics).toEqual([])
  },
)

test('the guide names every kind of step and section, with all of its own keys', () => {
  const table = guide.slice(guide.indexOf('| kind |'), guide.indexOf('Every table also has'))
  for (const kind of NODE_SCHEMAS.keys()) expect(table).toContain(`\`${kind}\``)
  for (const { kind, keys } of STEP_KINDS.values()) {
    const row = table.split('\n').find((line) => line.includes(`\`${kind}\``)) ?? ''
    for (const key of Object.keys(keys.shape)) expect(row).toContain(`\`${key}\``)
  }
})
