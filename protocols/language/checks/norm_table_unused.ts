import type { Check } from '../check.ts'

/**
 * What it does: Each table in the folder is used by some norm.
 *
 * Why it matters: A table that no norm names is one that somebody forgot to name.
 *
 * Example:
 *     norms/children.csv, and no norm with that table
 *
 * Instead:
 *     norms: [{ norm: children, of: time, table: norms/children.csv, … }]
 */
export default {
  code: 'norm_table_unused',
  severity: 'advice',
  needs: ['norms'],
  *run({ draft }) {
    const used = new Set(draft.norms.map(({ file }) => file))
    // A table that isn't there is told by itself; which one it stands for can't be known.
    if ([...used].some((file) => !draft.folder.files.has(file))) return
    for (const file of draft.folder.files.keys()) {
      if (!/^norms\/[A-Za-z0-9_.-]+\.csv$/.test(file) || used.has(file)) continue
      yield {
        at: { file, start: 0, end: 0 },
        message: 'No norm uses this table.',
        mend: `Name it in a norm: table: ${file}.`,
      }
    }
  },
} satisfies Check
