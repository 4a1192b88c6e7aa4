import type { Check } from '../check.ts'
import type { Section, Step } from '../model.ts'
import { passesOf } from '../passes.ts'
import { hasTable, isTrial, type Placed, sectionsOf, stepsOf } from '../structure.ts'

/**
 * What it does: A score that is worked out for each of a loop reads trials inside that loop.
 *
 * Why it matters: A trial outside of it has no row for any of its items, and the score would never have a
 * value.
 *
 * Example:
 *     - for-each: part … steps: [ … ]
 *     - { timed: run, … }
 *     scores: [{ score: time, each: part, value: first(run.time), … }]
 *
 * Instead:
 *     scores: [{ score: time, value: first(run.time), … }]
 */
export default {
  code: 'each_not_around',
  severity: 'error',
  needs: ['steps'],
  *run({ draft }) {
    const trials = new Map<string, Placed<Step | Section>>([
      ...stepsOf(draft).flatMap((each) => (isTrial(each.node) ? [[each.node.name, each] as const] : [])),
      ...sectionsOf(draft).flatMap((each) => (hasTable(each.node) ? [[each.node.name, each] as const] : [])),
    ])
    const scores = new Map(draft.scores.map((score) => [score.name, score]))
    const loopOf = (section: Section): string => passesOf(section, draft.draws)?.loop ?? section.name
    const loops = new Set(sectionsOf(draft).map(({ node }) => loopOf(node)))
    const around = (name: string, passed: Set<string>): readonly string[] => {
      if (passed.has(name)) return []
      passed.add(name)
      const trial = trials.get(name)
      if (trial) return trial.around.map(loopOf)
      return (scores.get(name)?.value.reads ?? []).flatMap((read) => around(read, passed))
    }
    for (const score of draft.scores) {
      const reached = around(score.name, new Set())
      if (reached.length === 0 && score.value.type.is === 'null') continue
      for (const [index, name] of score.each.entries()) {
        if (!loops.has(name) || reached.includes(name)) continue
        yield {
          at:
            draft.node(score, 'each')?.is === 'list'
              ? draft.at(score, 'each', index)
              : draft.at(score, 'each'),
          message: `No trial that "${score.name}" reads stands inside "${name}".`,
          mend: `Take "${name}" from each, or read a trial inside it.`,
        }
      }
    }
  },
} satisfies Check
