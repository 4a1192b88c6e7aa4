/** Values at the edges of the library's tables, compared on the command line and read as a colleague reads them. */
import { describe, expect, test } from 'vitest'
import { evenhand } from './evenhand.ts'

async function said(protocol: string, options: Readonly<Record<string, string>>): Promise<string> {
  const words = Object.entries(options).flatMap(([name, value]) => [`--${name}`, value])
  const { code, out } = await evenhand('compare', protocol, ...words)
  expect(code).toBe(0)
  return out
}

const WOMAN = { age: '40', sex: 'F', hand: 'right', dominant: 'right' }

describe('a cut-off', () => {
  // Seen in an abstract (Sigirtmac and Oksuz 2021): 37.08 s.
  test('is shown as it was published, and a value on it is not called above it', async () => {
    const at = await said('jebsen_taylor', { ...WOMAN, score: 'total', value: '37.08' })
    expect(at).toContain('not below the cut-off of 37.08: At or above the cut-off for an injured hand')
    const under = await said('jebsen_taylor', { ...WOMAN, score: 'total', value: '37.07' })
    expect(under).toContain('below the cut-off of 37.08: Below the cut-off')
  })

  // Seen in a textbook's table: the guide's threshold for a straight elbow is 0, and no people stand behind it.
  test('of a straight elbow: 0 reaches it, 5 degrees that are lacking do not', async () => {
    const elbow = { ...WOMAN, score: 'active_range', with: 'motion=elbow_extension' }
    expect(await said('range_of_motion', { ...elbow, value: '0' })).toContain(
      'not below the cut-off of 0: At',
    )
    expect(await said('range_of_motion', { ...elbow, value: '-5' })).toContain(
      'below the cut-off of 0: Under',
    )
  })
})

describe('a client', () => {
  // Memory: the 1969 table goes on to 94 years; one cell, of older women who write with the dominant hand, is left out.
  test('whose cell was left out is told what the table covers for such a client, not what it covers', async () => {
    const out = await said('jebsen_taylor', {
      ...WOMAN,
      age: '60',
      score: 'time',
      value: '12',
      with: 'subtest=writing',
    })
    expect(out).toContain('For this client the table covers 20 to 59 years.')
  })

  // Memory: 75 years and over in 1985, right: men 22.9 s (4.0), women 21.5 s (2.9).
  test('of unknown sex is shown both rows, and none is chosen', async () => {
    const out = await said('nine_hole_peg', {
      age: '75',
      sex: 'unknown',
      hand: 'right',
      score: 'time',
      value: '22',
    })
    expect(out).toContain('More than one row may apply: none is chosen.')
    expect(out).toMatch(/women, 75 years and over, right hand/)
    expect(out).toMatch(/ men, 75 years and over, right hand/)
  })

  test('far beyond the norm group has no percentile of 0.0, and none of 100.0', async () => {
    const slow = await said('nine_hole_peg', {
      age: '34',
      sex: 'M',
      hand: 'right',
      score: 'time',
      value: '60',
    })
    expect(slow).toContain('percentile below 0.1 (95 % interval below 0.1 to below 0.1)')
    const strong = await said('grip_strength', { ...WOMAN, score: 'mean_of_3', value: '80' })
    expect(strong).toContain('percentile above 99.9')
    expect(slow + strong).not.toMatch(/percentile (0\.0|100\.0)/)
  })
})
