import { describe, expect, test } from 'vitest'
import { conformanceCases, GROUPS } from './cel-cases.ts'
import skipped from './cel-skipped.json'

/** Each case that isn't met, with why; `…/*` stands for a whole section. */
const listed = Object.entries(skipped).flatMap(([reason, ids]) => ids.map((id) => ({ id, reason })))
const reasons = new Map(listed.map(({ id, reason }) => [id, reason]))
const cases = conformanceCases()
const sectionOf = (id: string): string => id.replace(/[^/]*$/, '*')
const reasonOf = (id: string): string | undefined => reasons.get(id) ?? reasons.get(sectionOf(id))
const isOf = (group: string) => (one: (typeof cases)[number]) => one.id.startsWith(`${group}/`)

describe('STD-FMT-3 the public conformance cases of CEL', () => {
  test.each(GROUPS)('%s: what is not on the list of skipped ones is met', (group) => {
    const met = cases.filter(isOf(group)).filter(({ id }) => reasonOf(id) === undefined)
    expect(met.filter(({ agrees }) => !agrees)).toEqual([])
  })

  test.each(GROUPS)('%s: what is on the list of skipped ones still differs', (group) => {
    const skipping = cases.filter(isOf(group)).filter(({ id }) => reasonOf(id) !== undefined)
    expect(skipping.filter(({ agrees }) => agrees).map(({ id }) => id)).toEqual([])
  })

  test('each entry of the list stands there once and names a case', () => {
    const known = new Set(cases.flatMap(({ id }) => [id, sectionOf(id)]))
    expect(listed.filter(({ id }) => !known.has(id))).toEqual([])
    expect(reasons.size).toBe(listed.length)
    expect(listed.filter(({ id }) => !id.endsWith('*') && reasons.has(sectionOf(id)))).toEqual([])
  })

  test('none of the cases was lost on the way', () => {
    expect(cases.length).toBe(1179)
    expect(cases.filter(({ agrees }) => agrees).length).toBeGreaterThanOrEqual(427)
  })
})
