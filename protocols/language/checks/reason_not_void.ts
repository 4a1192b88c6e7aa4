import type { Check } from '../check.ts'

/**
 * What it does: A protocol that words one of the four built-in void reasons itself keeps what it does: the
 * trial is void.
 *
 * Why it matters: An interruption that lets the trial stand would be recorded like one that doesn't.
 *
 * Example:
 *     interruption: { seen: Somebody came in., then: go-on }
 *
 * Instead:
 *     interruption: { seen: Somebody came in., then: void }
 */
export default {
  code: 'reason_not_void',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const happening of draft.happenings) {
      if (!happening.builtIn || happening.becomes === 'void') continue
      yield {
        at: draft.at(happening, 'then'),
        message: `"${happening.name}" is a reason that makes a trial void in every protocol.`,
        mend: 'Write then: void, or give the happening another name.',
      }
    }
  },
} satisfies Check
