import type { Check } from '../check.ts'
import { convert, unitOf } from '../units.ts'
import { quantityIn } from '../convert/values.ts'

/**
 * What it does: The longest gap is a time.
 *
 * Why it matters: After that time an interrupted test is not simply gone on with; something else than a
 * time can't be waited for.
 *
 * Example:
 *     about: { longest-gap: 15 m }
 *
 * Instead:
 *     about: { longest-gap: 15 min }
 */
export default {
  code: 'gap_not_a_time',
  severity: 'error',
  needs: ['about'],
  *run({ draft }) {
    const gap = draft.about ? draft.node(draft.about, 'longest-gap') : null
    if (gap?.is !== 'scalar') return
    const quantity = quantityIn(gap.written)
    if (!quantity || unitOf(quantity.unit) === null) return
    const minutes = convert(quantity.value, quantity.unit, 'min')
    if (minutes !== null && minutes > 0) return
    yield {
      at: gap.at,
      message:
        minutes === null ? `"${quantity.unit}" measures no time.` : 'The gap is not longer than nothing.',
      mend: 'Write a time above zero, such as 15 min.',
    }
  },
} satisfies Check
