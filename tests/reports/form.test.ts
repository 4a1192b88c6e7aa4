import { expect, test } from 'vitest'
import { libraryProtocol, madeProtocol } from '../runner/giving.ts'
import { formRead, missingFrom } from './forms.ts'

/** One with a repeat, one with lists and rules, one with sheets, one with ladders and a drawn list. */
const TESTS = ['nine_hole_peg', 'action_research_arm', 'range_of_motion', 'touch_threshold'] as const

test.each(TESTS)('every word of %s stands on paper, tagged, with a title', (id) => {
  const protocol = libraryProtocol(id)
  const form = formRead(protocol)
  expect(Object.keys(protocol.words[0]?.texts ?? {}).length).toBeGreaterThan(40)
  expect(missingFrom(form, protocol)).toEqual([])
  expect(form.told).toBe(form.pages.length)
  expect(form.info).toMatch(/Tagged:\s+yes/)
  expect(form.info).toMatch(/Title:\s+.+: script and paper form/)
})

test('a form’s headings and tables are tagged', () => {
  const structure = formRead(
    madeProtocol('\n  - { ask: felt, options: { yes: Felt, no: Not felt } }\n'),
  ).structure()
  for (const tag of ['H1', 'H2', 'Table', 'TH']) expect(structure).toMatch(new RegExp(`\\b${tag}\\b`))
})

test('a form has a row for each pass and a column for each hand, with the signs to circle', () => {
  const protocol = madeProtocol(
    `
  - for-each: hand
    in: hands
    steps:
      - for-each: size
        in: sizes
        where: size.used
        steps:
          - repeat: go
            times: 2
            steps:
              - { rated: grade, scale: { 0: None, 1: Part, 2: Whole } }
`,
    `
lists: { sizes: [{ id: thick, used: true }, { id: thin, used: true }, { id: broken, used: false }] }
happenings: { fell: { seen: A ring falls., then: tally, key: f, adds: 5 s } }`,
  )
  const form = formRead(protocol)
  const blank = form.pages.join('').split('Paper form').at(-1) ?? ''
  expect(blank.match(/go 1/g)).toHaveLength(2)
  expect(blank.match(/go 2/g)).toHaveLength(2)
  expect(blank.replace(/\s+/g, ' ').match(/(?:0 1 2 V U R N A X ?){2}/g)).toHaveLength(4)
  for (const words of [
    'right hand',
    'left hand',
    'thick',
    'thin',
    '0 = None; 1 = Part; 2 = Whole',
    'each adds 5 s',
  ])
    expect(blank).toContain(words)
  expect(blank).not.toContain('broken')
})

test('words that change with a condition or an item stand once for each', () => {
  const protocol = madeProtocol(
    `
  - for-each: size
    in: sizes
    steps:
      - { instruct: tell, text: "{size, select, thick {The thick ring} other {The thin ring}}{pegs, select, oak {, oak} other {}}" }
      - { ask: lifted, text: Lifted?, options: { yes: Lifted, no: Not lifted } }
`,
    `
lists: { sizes: [{ id: thick }, { id: thin }] }
conditions: { pegs: { set-by: clinic, options: { oak: Oak pegs, cork: Cork pegs }, usual: cork } }`,
  )
  const form = formRead(protocol)
  for (const words of [
    'thick: The thick ring',
    'thin: The thin ring',
    'where pegs is “Oak pegs”: The thin ring, oak',
  ])
    expect(form.has(words)).toBe(true)
})
