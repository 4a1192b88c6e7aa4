import type { Check } from '../check.ts'
import { namesOf } from '../convert/names.ts'
import { offer } from '../schema/suggest.ts'
import { sectionsOf } from '../structure.ts'

/**
 * What it does: A score is worked out for each of loops that exist: sections that go through a list.
 *
 * Why it matters: A score for each of something that isn't gone through has no place to be worked out at.
 *
 * Example:
 *     scores: [{ score: time, each: hnad, … }]
 *
 * Instead:
 *     scores: [{ score: time, each: hand, … }]
 */
export default {
  code: 'each_unknown',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const sections = sectionsOf(draft)
    const declared = namesOf(names, 'section')
    for (const score of draft.scores) {
      for (const [index, name] of score.each.entries()) {
        const path =
          draft.node(score, 'each')?.is === 'list' ? (['each', index] as const) : (['each'] as const)
        const section = sections.find(({ node }) => node.name === name)?.node
        if (!declared.includes(name)) {
          yield {
            at: draft.at(score, ...path),
            message: `There is no loop "${name}".`,
            mend: offer(name, declared, 'loops'),
          }
        } else if (
          section &&
          section.fields.in === undefined &&
          !draft.isBroken(draft.places.get(section) ?? draft.tree)
        ) {
          yield {
            at: draft.at(score, ...path),
            message: `"${name}" repeats; it does not go through a list.`,
            mend: 'Name a section over hands or over a list, and take all passes together in the formula.',
          }
        }
      }
    }
  },
} satisfies Check
