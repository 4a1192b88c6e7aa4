import type { Check } from '../check.ts'
import type { Declared, NameOf } from '../convert/names.ts'
import { Lines } from '../positions.ts'

const SHARED: readonly NameOf[] = ['step', 'section', 'loop', 'rule', 'score', 'condition', 'list']
const OWN: readonly NameOf[] = ['norm', 'precaution']

/**
 * What it does: Steps, sections, rules, scores, conditions and lists have one name each; norms,
 * precautions and the items of one list are told apart by theirs.
 *
 * Why it matters: A formula or an event that says the name could mean either; results would be mixed up.
 *
 * Example:
 *     scores: [{ score: time, value: first(run.time) }, { score: time, value: min(run.time) }]
 *
 * Instead:
 *     scores: [{ score: first_time, value: first(run.time) }, { score: best_time, value: min(run.time) }]
 */
export default {
  code: 'name_twice',
  severity: 'error',
  needs: [],
  *run({ draft, names }) {
    const lines = new Lines(draft.folder.files.get(draft.tree.at.file) ?? '')
    const seen = new Map<string, Declared>()
    for (const declared of names) {
      const { name, of, at } = declared
      const space = SHARED.includes(of) ? 'shared' : OWN.includes(of) ? of : null
      if (space === null) continue
      const first = seen.get(`${space} ${name}`)
      if (first) {
        yield {
          at,
          message: `The name "${name}" is already that of a ${first.of} in line ${lines.at(first.at.start).line}.`,
          mend: 'Give one of them another name.',
        }
      } else {
        seen.set(`${space} ${name}`, declared)
      }
    }
  },
} satisfies Check
