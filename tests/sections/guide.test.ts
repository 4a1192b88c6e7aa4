import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readProtocol } from '../../protocols/language/read.ts'

const guide = readFileSync(join(import.meta.dirname, '../../protocols/language/GUIDE.md'), 'utf8')
const examples = [...guide.matchAll(/^#+ (.+)\n(?:(?!^#).*\n)*?```yaml example\n([\s\S]*?)```/gm)].map(
  ([, title = '', text = '']) => ({ title, text }),
)

const HEAD = `evenhand: 1
id: example
version: 1.0.0
language: en
title: Example
about: { purpose: To show one thing., minutes: [1, 2], suits: Nobody. }
precautions: [{ id: pain, ask: Does the hand hurt? }]
`

test('the guide has an example for what can’t be told in a table', () => {
  expect(examples.length).toBeGreaterThanOrEqual(1)
})

test.each(examples)('the example under “$title” is read without an error', ({ text }) => {
  const folder = { label: 'example', files: new Map([['protocol.yaml', HEAD + text]]) }
  const { protocol, diagnostics } = readProtocol(folder)
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
  expect(protocol).not.toBeNull()
})
