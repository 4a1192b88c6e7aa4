import type { Check } from '../check.ts'
import { hasTable, isTrial, sectionsOf, stepsOf } from '../structure.ts'

/**
 * What it does: A score rests on a trial, itself or by way of other scores.
 *
 * Why it matters: A score that reads none has the same value whatever the client does.
 *
 * Example:
 *     - { score: time, value: 12, unit: s }
 *
 * Instead:
 *     - { score: time, value: first(run.time), unit: s }
 */
export default {
  code: 'score_without_trial',
  severity: 'warning',
  needs: ['steps'],
  *run({ draft }) {
    const trials = new Set([
      ...stepsOf(draft).flatMap(({ node }) => (isTrial(node) ? [node.name] : [])),
      ...sectionsOf(draft).flatMap(({ node }) => (hasTable(node) ? [node.name] : [])),
    ])
    const rests = (name: string, passed: Set<string>): boolean => {
      if (passed.has(name)) return false
      passed.add(name)
      const reads = draft.scores.find((score) => score.name === name)?.value.reads ?? []
      return reads.some((read) => trials.has(read) || rests(read, passed))
    }
    for (const score of draft.scores) {
      if (score.value.type.is === 'null' || rests(score.name, new Set())) continue
      yield {
        at: draft.at(score, 'value'),
        message: `The score "${score.name}" rests on no trial.`,
        mend: 'Read a trial in the formula, such as first(run.time).',
      }
    }
  },
} satisfies Check
