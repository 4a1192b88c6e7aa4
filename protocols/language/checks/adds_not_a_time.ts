import type { Check } from '../check.ts'
import { unitFactor, unitOf } from '../units.ts'

/**
 * What it does: What a happening adds is a time.
 *
 * Why it matters: It is summed into the trial's added time, beside the time itself.
 *
 * Example:
 *     fell: { seen: A ring falls., then: tally, key: f, adds: 5 }
 *
 * Instead:
 *     fell: { seen: A ring falls., then: tally, key: f, adds: 5 s }
 */
export default {
  code: 'adds_not_a_time',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const happening of draft.happenings) {
      const { adds } = happening
      if (adds === null || unitOf(adds.unit) === null || unitFactor(adds.unit, 's') !== null) continue
      yield {
        at: draft.at(happening, 'adds'),
        message:
          adds.unit === '1' ? 'A number without a unit is no time.' : `"${adds.unit}" measures no time.`,
        mend: `Write it with its unit, such as ${adds.value} s.`,
      }
    }
  },
} satisfies Check
