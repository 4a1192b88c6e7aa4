import { describe, expect, test } from 'vitest'
import { shortText } from '../../main/reports/index.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import { readBack, reportOf } from './reports.ts'

const WHAT = 'Standing at a high table'
const REASON = 'Cannot sit for long'

const told = (accommodation: string | null): readonly EventBody[] => [
  { kind: 'accommodated', accommodation, what: WHAT, reason: REASON },
]

const TESTS = ['nine_hole_peg', 'grip_strength'] as const

/** Whatever of a comparison could be read as a standing among others. */
const standings = (id: string, events: readonly EventBody[]) =>
  reportOf(id, { told: events }).result.scores.flatMap(({ norms }) => norms.flatMap(({ strata }) => strata))

describe.each(TESTS)('%s', (id) => {
  test('STD-ADM-3 a modification leaves no norm to be read anywhere, and is told with its reason', () => {
    // What is withheld was there to be shown.
    expect(standings(id, []).length).toBeGreaterThan(0)
    expect(standings(id, told(null))).toEqual([])
    const input = reportOf(id, { told: told(null) })
    const compared = input.result.scores.flatMap(({ norms }) => norms)
    expect(compared.length).toBeGreaterThan(0)
    for (const { status, caution } of compared) {
      expect(status).toBe('withheld')
      expect(caution.map(({ code }) => code)).toContain('modified')
    }
    expect(JSON.stringify(input.result)).not.toMatch(/"percentile":\{|"percentile":\d/)
    const { text } = readBack(input)
    for (const words of [WHAT, REASON]) expect(text).toContain(words)
    expect(text).not.toMatch(/percentile (?:rank )?\d/i)
    expect(shortText(input.result)).toContain(WHAT)
    expect(shortText(input.result)).not.toMatch(/percentile/i)
  })

  test('STD-ADM-14 what the protocol allows keeps the norms and is told; what it doesn’t name is no accommodation', () => {
    const [allowed] = reportOf(id).protocol.accommodations
    const input = reportOf(id, { told: told(allowed?.id ?? '') })
    expect(input.result.deviations.map(({ code, norms, reason }) => [code, norms, reason])).toEqual([
      ['accommodation', 'kept', REASON],
    ])
    expect(standings(id, told(allowed?.id ?? ''))).toEqual(standings(id, []))
    for (const words of [WHAT, REASON]) expect(readBack(input).text).toContain(words)
    expect(reportOf(id, { told: told('anything_else') }).result.deviations).toEqual([])
  })
})
