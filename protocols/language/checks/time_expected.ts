import type { Check } from '../check.ts'
import { SECTION_KINDS, STEP_KINDS } from '../schema/kinds.ts'
import { nodesOf } from '../structure.ts'
import { convert, unitOf } from '../units.ts'

/** The quantity behind `is` of a value that the file fixes. */
function fixed(value: unknown): { readonly value: number; readonly unit: string } | null {
  if (typeof value !== 'object' || value === null || !('is' in value)) return null
  const { is } = value
  if (typeof is !== 'object' || is === null || !('value' in is) || !('unit' in is)) return null
  return typeof is.value === 'number' && typeof is.unit === 'string'
    ? { value: is.value, unit: is.unit }
    : null
}

/**
 * What it does: What a step waits for or is bounded by is a time above zero, with its unit.
 *
 * Why it matters: A clock can't run for 60 newtons, and a bare 60 may be seconds or minutes.
 *
 * Example:
 *     - { timed: run, …, limit: 60 }
 *
 * Instead:
 *     - { timed: run, …, limit: 60 s }
 */
export default {
  code: 'time_expected',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { node } of nodesOf(draft)) {
      if (node.node === 'rule') continue
      const kind = STEP_KINDS.get(node.kind) ?? SECTION_KINDS.get(node.kind)
      for (const [key, is] of Object.entries(kind?.values ?? {})) {
        const quantity = is === 'time' ? fixed(node.fields[key]) : null
        if (!quantity || unitOf(quantity.unit) === null) continue
        const seconds = quantity.unit === '1' ? null : convert(quantity.value, quantity.unit, 's')
        if (seconds !== null && seconds > 0) continue
        const bare = quantity.unit === '1'
        yield {
          at: draft.at(node, key),
          message: bare
            ? `"${key}" is a time, and a number without a unit is none.`
            : seconds === null
              ? `"${key}" is a time, and "${quantity.unit}" measures none.`
              : `"${key}" is no time above zero.`,
          mend: bare ? `Write its unit, such as ${quantity.value} s.` : 'Write a time, such as 60 s.',
        }
      }
    }
  },
} satisfies Check
