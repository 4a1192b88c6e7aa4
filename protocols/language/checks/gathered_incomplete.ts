import type { Check } from '../check.ts'

/**
 * What it does: A norm says of each condition how it stood where its figures were gathered, or that it is
 * unknown.
 *
 * Why it matters: What isn't said counts as unknown, and a reader can't tell whether it was looked for.
 *
 * Example:
 *     conditions: { board: …, fill: … } … gathered: { board: oak }
 *
 * Instead:
 *     gathered: { board: oak, fill: unknown }
 */
export default {
  code: 'gathered_incomplete',
  severity: 'advice',
  needs: ['conditions', 'norms'],
  *run({ draft }) {
    for (const norm of draft.norms) {
      const missing = draft.conditions
        .filter(({ name }) => !Object.hasOwn(norm.gathered, name))
        .map(({ name }) => name)
      if (missing.length === 0) continue
      yield {
        at: draft.nameAt(norm),
        message: `The norm "${norm.name}" does not say how these stood where it was gathered: ${missing.join(', ')}.`,
        mend: `Add them to gathered, with unknown where the source doesn't say.`,
      }
    }
  },
} satisfies Check
