import type { Check } from '../check.ts'

/**
 * What it does: Each source is named by a norm or a change figure, or says in its note what it was used
 * for.
 *
 * Why it matters: A reader can't tell which figure rests on a source that nothing names.
 *
 * Example:
 *     sources: { smith1990: { cite: "Smith A. 1990", seen: memory } }   # named nowhere
 *
 * Instead:
 *     sources: { smith1990: { cite: "Smith A. 1990", seen: memory, note: Procedure. } }
 */
export default {
  code: 'source_unused',
  severity: 'advice',
  needs: ['sources', 'norms', 'change'],
  *run({ draft, names }) {
    const used = new Set([...draft.norms, ...draft.change].map(({ source }) => source))
    const known = new Set(names.filter(({ of }) => of === 'source').map(({ name }) => name))
    // A name that no source has is told by itself; which source it stands for can't be known.
    if ([...used].some((name) => !known.has(name))) return
    for (const source of draft.sources) {
      if (used.has(source.id) || source.note !== '') continue
      yield {
        at: draft.at(source, 'cite'),
        message: `Nothing names the source "${source.id}".`,
        mend: 'Say in its note what it was used for, or take it away.',
      }
    }
  },
} satisfies Check
