import type { Check } from '../check.ts'
import { STEP_KINDS } from '../schema/kinds.ts'
import { stepsOf } from '../structure.ts'

const ROW = ['outcome', 'rows']

/**
 * What it does: What a step names as columns of its own is named like no other column of its table: none of
 * its kind, no loop around it, no happening that is tallied, and `outcome` and `rows` neither.
 *
 * Why it matters: A formula would read one and mean the other.
 *
 * Example:
 *     - { timed: run, …, splits: { time: The line is crossed } }
 *
 * Instead:
 *     - { timed: run, …, splits: { crossing: The line is crossed } }
 */
export default {
  code: 'column_clash',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    const tallied = draft.happenings.filter(({ becomes }) => becomes === 'tally').map(({ name }) => name)
    for (const { node, around } of stepsOf(draft)) {
      const kind = STEP_KINDS.get(node.kind)
      const common = Object.keys(kind?.columns({ ...node, fields: {} }) ?? {})
      const taken = new Set([...ROW, ...common, ...tallied, ...around.map(({ name }) => name)])
      for (const key of ['splits', 'reached']) {
        const own = node.fields[key]
        if (!Object.hasOwn(kind?.keys.shape ?? {}, key) || typeof own !== 'object' || own === null) continue
        for (const name of Object.keys(own)) {
          if (taken.has(name)) {
            yield {
              at: draft.at(node, key, name),
              message: `"${name}" is the name of another column of "${node.name}".`,
              mend: 'Give it another name.',
            }
          }
          taken.add(name)
        }
      }
    }
  },
} satisfies Check
