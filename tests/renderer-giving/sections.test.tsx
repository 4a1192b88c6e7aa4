import { describe, expect, it } from 'vitest'
import { facts, Giving, madeProtocol } from '../runner/giving.ts'
import { drawn } from './drawn.tsx'

const PROTOCOL = madeProtocol(
  `
  - ladder: smallest
    over: gaps
    level: spacing
    begin: g3
    accepted: last(told.value) == 1
    moves: { accepted: down, failed: up }
    turns: 2
    finds: least-accepted
    steps:
      - group: one
        steps:
          - choose: how
            cases: [{ when: spacing.turn > 0, steps: [{ measured: told, unit: "{count}", range: [0, 1] }] }]
  - for-each: rater
    in: raters
    steps: [{ measured: quality, unit: "{score}", range: [0, 3] }]
`,
  `
raters: { count: 2, unseen: true }
lists: { gaps: [{ id: g2 }, { id: g3, title: Three millimetres }, { id: g4 }, { id: g5 }] }
scores:
  - { score: sums, value: sum(quality.value), unit: "{score}", better: none }
`,
)
const begun = () => new Giving(PROTOCOL).begin(facts({ dominantBefore: 'right' }))

describe('The screen within sections', () => {
  it('shows a ladder’s level, and which levels were given before with what came of them', () => {
    const giving = begun()
    expect(drawn(giving.view())).not.toContain('Levels so far')
    giving.measure(0).measure(1)
    const markup = drawn(giving.view())
    expect(markup).toContain('Levels so far')
    expect(markup).toMatch(/Three millimetres: not accepted.*g4: accepted/s)
    expect(giving.view().step?.passes).toMatchObject([{ id: 'g3', number: 3 }])
  })

  it('has no words for a choice or a group: they are no part of where we are', () => {
    expect(
      begun()
        .view()
        .step?.passes.map(({ loop }) => loop),
    ).toEqual(['spacing'])
    expect(drawn(begun().view())).not.toMatch(/\bhow\b|\bone\b/)
  })

  it('says of a section that it did nothing for lack of an answer, in place of its rule’s words', () => {
    const giving = begun()
    const place = giving.view().step?.place ?? {}
    giving.do({ kind: 'closed', what: 'told', place, outcome: 'refused', reason: '' })
    expect(giving.where()).toBe('quality at rater_1: waiting')
    expect(drawn(giving.view())).toContain('smallest: nothing was done, since what it asks has no answer.')
  })

  it('names who rates, and hides what another gave', () => {
    const giving = begun().measure(1).measure(0).measure(1)
    expect(giving.where()).toBe('quality at rater_1: waiting')
    giving.measure(3)
    const markup = drawn(giving.view())
    expect(markup).toContain('Rater 2')
    expect(giving.view().trials.at(-1)?.readings).toEqual({})
  })
})
