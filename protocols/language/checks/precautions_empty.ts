import type { Check } from '../check.ts'
import { childOf, entryOf } from '../reader/tree.ts'

/**
 * What it does: A protocol asks at least one thing that could forbid or limit the test for this client.
 *
 * Why it matters: Each precaution is answered before the first trial; a test without any is given to
 * everybody.
 *
 * Example:
 *     precautions: []
 *
 * Instead:
 *     precautions: [{ id: pain, ask: Does the hand hurt at rest? }]
 */
export default {
  code: 'precautions_empty',
  severity: 'warning',
  needs: ['precautions'],
  *run({ draft }) {
    if (draft.precautions.length > 0) return
    const at = entryOf(draft.tree, 'precautions')?.keyAt ?? childOf(draft.tree, 'id')?.at ?? draft.tree.at
    yield {
      at,
      message: 'The protocol names no precaution.',
      mend: 'Add what has to be asked before this test, such as pain, healing tissue or skin.',
    }
  },
} satisfies Check
