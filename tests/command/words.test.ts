import { describe, expect, test } from 'vitest'
import { tellReason, type ReasonGroup } from '../../main/hosts/command/tell.ts'
import { isHostWord } from '../../main/hosts/words.ts'
import { normComparison } from '../../protocols/scoring/result.ts'
import {
  CHANGE_CAUTIONS,
  CHANGE_SENTENCES,
  MISSING,
  NORM_CAUTIONS,
  OTHER_HAND,
} from '../../protocols/scoring/reasons.ts'
import { evenhand } from './evenhand.ts'

const GROUPS = {
  missing: MISSING,
  norm_caution: NORM_CAUTIONS,
  other_hand: OTHER_HAND,
  change_caution: CHANGE_CAUTIONS,
  change_sentence: CHANGE_SENTENCES,
} satisfies Record<ReasonGroup, Readonly<Record<string, readonly string[]>>>

describe('what people read on the command line instead of codes', () => {
  test.each(Object.entries(GROUPS))('every code of a result has words: %s', (group, codes) => {
    for (const [code, details] of Object.entries(codes)) {
      const detail = Object.fromEntries(details.map((name) => [name, 2]))
      expect([code, isHostWord(`${group}.${code}`)]).toEqual([code, true])
      expect(tellReason(group as ReasonGroup, { code, detail })).not.toMatch(/[{}_]|undefined/)
    }
  })

  test('every status and every definition of a percentile has words', () => {
    const { status, strata } = normComparison.shape
    for (const one of status.options.filter((each) => each !== 'used'))
      expect([one, isHostWord(`norm.status.${one}`)]).toEqual([one, true])
    // Bands and cut-offs give no percentile, so there is nothing to define.
    for (const one of strata.element.shape.definition.options.filter((each) => each !== 'none'))
      expect([one, isHostWord(`definition.${one}`)]).toEqual([one, true])
  })

  test('a code that is new is shown as it is', () => {
    expect(tellReason('missing', { code: 'never_heard_of', detail: {} })).toBe('never heard of')
  })
})

const WHO = ['--age', '34', '--sex', 'F'] as const

const grip = (score: string, ...rest: string[]) =>
  evenhand('compare', 'grip_strength', '--score', score, '--value', '38', ...WHO, ...rest)

describe('evenhand compare, as people read it', () => {
  test('gives the row in words, what the percentile is, and what to keep in mind', async () => {
    const time = ['compare', 'nine_hole_peg', '--score', 'time', '--value', '18.2', ...WHO] as const
    const { code, out } = await evenhand(...time, '--hand', 'right')
    expect(code).toBe(0)
    expect(out).toContain('Time of the first run (right hand): 18.2 s')
    expect(out).toMatch(/women, 30 to 34 years, right hand .*n 26, mean [\d.]+ s, SD [\d.]+ s/)
    expect(out).toMatch(/z \d\.\d\d, percentile [\d.]+ \(95 % interval [\d.]+ to [\d.]+\)/)
    expect(out).toContain('per cent of the norm group whose performance lies below')
    expect(out).toContain('from memory, not verified')
    expect(out).toContain('Outside the ages of this table: nothing is made up for it.')
    expect(out).not.toMatch(/\b(out_of_range|conditions_unknown|modified-t|table_ages)\b/)
  })

  test('asks for no hand where the score belongs to none, and says which hand where it belongs to one', async () => {
    const both = await grip('highest_of_both')
    expect([both.code, both.out.split('\n')[0]]).toEqual([0, 'Highest of both hands: 38.0 kgf'])
    expect((await grip('highest_of_both', '--hand', 'left')).out).toBe(both.out)
    const mean = await grip('mean_of_3')
    expect([mean.code, mean.err]).toEqual([
      2,
      'The score mean_of_3 is of one hand.\nGive --hand right or --hand left.',
    ])
    expect((await grip('mean_of_3', '--hand', 'left')).out).toContain('(left hand): 38.0 kgf')
  })
})

test('evenhand rehearse tells why a score has no value, and how a hand stands beside the other', async () => {
  const { out } = await evenhand('rehearse', 'grip_strength', '--seed', '3')
  expect(out).toContain('no value: what the protocol asks for first was not given')
  expect(out).toMatch(/beside the other hand: [\d.]+ kgf apart, ratio \d\.\d\d/)
  expect(out).toContain('given on 2025-01-15, at the age of 39')
})
