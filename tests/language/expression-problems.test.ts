import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { EXPRESSION_CODES } from '../../protocols/language/convert/link.ts'
import { readProtocol } from '../../protocols/language/read.ts'

const PAGE = readFileSync('protocols/language/manual/expression-problems.md', 'utf8')

/** A page by its code: the expressions of its example and of what to write instead. */
const pages = new Map(
  PAGE.split(/^### /m)
    .slice(1)
    .map((page) => {
      const code = /^`(\w+)` \(error\)$/m.exec(page)?.[1] ?? ''
      return [code, [...page.matchAll(/^```\n(.+)\n```$/gm)].map(([, expression]) => expression ?? '')]
    }),
)

/** Codes of what is wrong with a condition, in a test with the trials that the page tells of. */
function problemsOf(expression: string): readonly string[] {
  const text = `
evenhand: 1
id: made
version: 1.0.0
language: en
title: Made
about: { purpose: To try a formula., minutes: [1, 2], suits: Nobody. }
steps:
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { timed: carry, start: { said: go }, stop: { seen: Home. } }
      - { counted: taps, start: { said: go }, window: 5 s, unit: "{count}", range: [0, 90] }
      - { rule: tried, when: ${JSON.stringify(expression)}, note: Told. }
scores:
  - { score: time, title: Time, each: hand, value: mean(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: number, title: Taps, each: hand, value: sum(taps.count), unit: "{count}", better: higher, decimals: 0 }
`
  return readProtocol({ label: '', files: new Map([['protocol.yaml', text]]) })
    .diagnostics.filter(({ severity }) => severity === 'error')
    .map(({ code }) => code)
}

describe('the manual’s pages on problems in expressions', () => {
  test('there is one for each code, in order', () => {
    expect([...pages.keys()]).toEqual(Object.values(EXPRESSION_CODES))
  })

  test.each([...pages].filter(([code]) => code !== 'expression_too_large'))(
    '%s: its example has that problem and no other, and what to write instead has none',
    (code, [example = '', instead = '']) => {
      expect(problemsOf(example)).toEqual([code])
      expect(problemsOf(instead)).toEqual([])
    },
  )
})
