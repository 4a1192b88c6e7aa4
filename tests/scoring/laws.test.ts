/** Laws of scoring that hold for every administration, whatever was measured. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { otherSide, type Side } from '../../protocols/client.ts'
import type { Outcome } from '../../protocols/language/model.ts'
import type { Trial } from '../../protocols/runner/view.ts'
import { evaluated, placeWith } from '../expressions/worked.ts'
import { carries, factsOf, protocolOf, scoresOf, standingOf } from './invented.ts'

const protocol = protocolOf()

describe('null never turns into a number', () => {
  /** Formulas of the first of three times, which is missing, and of plain numbers; `true` where it is used. */
  const { formula } = fc.letrec<{ formula: readonly [string, boolean] }>((tie) => ({
    formula: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      fc.constant(['first(run.time)', true] as const),
      fc.constant(['min(run.time)', true] as const),
      fc.integer({ min: 1, max: 9 }).map((n) => [`${n}.5`, false] as const),
      fc
        .tuple(tie('formula'), fc.constantFrom('+', '-'), tie('formula'))
        .map(([[a, inA], operator, [b, inB]]) => [`(${a} ${operator} ${b})`, inA || inB] as const),
      fc
        .tuple(tie('formula'), fc.integer({ min: 1, max: 9 }), fc.constantFrom('*', '/'))
        .map(([[a, inA], n, operator]) => [`(${a} ${operator} ${n})`, inA] as const),
      tie('formula').map(([a, inA]) => [`-(${a})`, inA] as const),
      fc
        .tuple(
          fc.constantFrom('min', 'max', 'sum', 'mean', 'median', 'spread', 'sd'),
          fc.array(tie('formula'), { minLength: 2, maxLength: 3 }),
        )
        .map(
          ([name, parts]) =>
            [`${name}([${parts.map(([part]) => part).join(', ')}])`, parts.some(([, uses]) => uses)] as const,
        ),
      fc
        .tuple(tie('formula'), tie('formula'))
        .map(([[a, inA], [b, inB]]) => [`(${a} > 4 ? ${b} : ${b} + 1)`, inA || inB] as const),
    ),
  }))

  test('what is worked out from a missing value is missing, for the same reason', () => {
    fc.assert(
      fc.property(formula, ([source, uses]) => {
        fc.pre(uses && source.length < 2000)
        const { value, missing } = evaluated(source, placeWith([null, 19, 21]))
        expect([value, missing?.code]).toEqual([null, 'refused'])
      }),
      { numRuns: 400 },
    )
  })

  const outcome: fc.Arbitrary<Outcome> = fc.constantFrom(
    'refused',
    'not_allowed',
    'absent',
    'not_given',
    'stopped',
  )

  test('a score that rests on a trial without a value has none', () => {
    fc.assert(
      fc.property(
        outcome,
        fc.constantFrom('right', 'left'),
        fc.constantFrom('near', 'far'),
        (closed, side, peg) => {
          const trials = carries((hand, task, round) =>
            hand === side && task === peg && round === 2 ? { outcome: closed, readings: {} } : {},
          )
          const scores = scoresOf(standingOf({ protocol, trials }))
          for (const name of [`fastest@${side}@${peg}`, `total@${side}`, `average@${side}`, `speed@${side}`])
            expect([name, scores[name]]).toEqual([name, closed])
          expect(scores.side_ratio).toBe(closed)
          expect(typeof scores[`total@${otherSide(side)}`]).toBe('number')
        },
      ),
    )
  })
})

/** Times of the twelve carries in halves of a second, some closed. */
const given = fc.array(
  fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 4, max: 160 }).map((n) => ({ time: n / 2 })) },
    { weight: 1, arbitrary: fc.constantFrom('unable', 'limit', 'refused').map((outcome) => ({ outcome })) },
  ),
  { minLength: 12, maxLength: 12 },
)
type Given = { readonly time: number } | { readonly outcome: 'unable' | 'limit' | 'refused' }

function trialsOf(times: readonly Given[]): Trial[] {
  let next = 0
  return carries(() => {
    const one = times[next++]
    if (one === undefined) return {}
    return 'time' in one ? { readings: { time: one.time } } : { outcome: one.outcome, readings: {} }
  })
}

const mirrored = (name: string): string =>
  name.replace(/@(right|left)/, (_at, side: Side) => `@${otherSide(side)}`)

test('relabelling the hands permutes the scores and changes none', () => {
  fc.assert(
    fc.property(
      given,
      fc.constantFrom<Side>('right', 'left'),
      fc.constantFrom<Side>('right', 'left'),
      (times, dominant, sore) => {
        const arm = factsOf().arms.right
        const armsOf = (affected: Side) => ({
          right: { ...arm, status: affected === 'right' ? ('affected' as const) : ('unaffected' as const) },
          left: { ...arm, status: affected === 'left' ? ('affected' as const) : ('unaffected' as const) },
        })
        const trials = trialsOf(times)
        const items: Side[] = ['left', 'right']
        const order = { section: 'hand', place: {}, rule: 'chosen' }
        const as = scoresOf(
          standingOf({
            protocol,
            trials,
            facts: factsOf({ dominantBefore: dominant, arms: armsOf(sore) }),
            orders: [{ ...order, items }],
          }),
        )
        const turned = scoresOf(
          standingOf({
            protocol,
            trials: trials.map((trial) => ({
              ...trial,
              place: { ...trial.place, hand: otherSide(trial.place.hand as Side) },
            })),
            facts: factsOf({ dominantBefore: otherSide(dominant), arms: armsOf(otherSide(sore)) }),
            orders: [{ ...order, items: items.map(otherSide) }],
          }),
        )
        const expected = Object.fromEntries(
          Object.entries(as).map(([name, value]) => [mirrored(name), value]),
        )
        expect(turned).toEqual(expected)
      },
    ),
    { numRuns: 60 },
  )
})

test('the order in which hands and tasks are given doesn’t change the scores', () => {
  fc.assert(
    fc.property(given, fc.array(fc.nat(1000), { minLength: 12, maxLength: 12 }), (times, draws) => {
      const trials = trialsOf(times)
      const usual = scoresOf(standingOf({ protocol, trials }))
      // Each hand's each task keeps its own rounds in order; which of them goes on next is drawn.
      const waiting = [...Map.groupBy(trials, ({ place }) => `${place.hand} ${place.task}`).values()]
      const mixed = draws.flatMap((draw) => {
        const open = waiting.filter((one) => one.length > 0)
        return open[draw % open.length]?.shift() ?? []
      })
      expect(mixed).toHaveLength(trials.length)
      expect(scoresOf(standingOf({ protocol, trials: mixed }))).toEqual(usual)
    }),
    { numRuns: 60 },
  )
})
