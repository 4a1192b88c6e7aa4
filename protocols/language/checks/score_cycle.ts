import type { Check } from '../check.ts'
import { namesRead } from '../convert/link.ts'

/**
 * What it does: No score is worked out from itself, also not by way of others.
 *
 * Why it matters: Such a score has no value at all.
 *
 * Example:
 *     - { score: a, value: b + 1 }
 *     - { score: b, value: a + 1 }
 *
 * Instead:
 *     - { score: a, value: first(run.time) }
 *     - { score: b, value: a + 1 }
 */
export default {
  code: 'score_cycle',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const reads = new Map(
      draft.scores.flatMap((score) => {
        const placed = draft.expressions.find(({ hole }) => hole === score.value)
        return placed ? [[score.name, [...namesRead(placed)]] as const] : []
      }),
    )
    const reaches = (from: string, to: string, passed: Set<string>): boolean =>
      (reads.get(from) ?? []).some((next) => {
        if (next === to) return true
        if (passed.has(next)) return false
        passed.add(next)
        return reaches(next, to, passed)
      })
    for (const score of draft.scores) {
      if (!reaches(score.name, score.name, new Set())) continue
      yield {
        at: draft.at(score, 'value'),
        message: `The score "${score.name}" is worked out from itself.`,
        mend: 'Let one of the scores in the circle rest on trials only.',
      }
    }
  },
} satisfies Check
