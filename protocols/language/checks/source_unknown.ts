import type { Check } from '../check.ts'
import { offer } from '../schema/suggest.ts'

/**
 * What it does: Norms and change figures name a source that the protocol lists.
 *
 * Why it matters: A figure whose origin can't be looked up can't be verified.
 *
 * Example:
 *     norms: [{ norm: adults, …, source: smith1990 }]   # not under sources
 *
 * Instead:
 *     sources: { smith1990: { cite: "Smith A. 1990", seen: memory } }
 */
export default {
  code: 'source_unknown',
  severity: 'error',
  needs: ['sources'],
  *run({ draft, names }) {
    const known = names.filter(({ of }) => of === 'source').map(({ name }) => name)
    for (const piece of [...draft.norms, ...draft.change]) {
      if (known.includes(piece.source)) continue
      yield {
        at: draft.at(piece, 'source'),
        message: `There is no source "${piece.source}".`,
        mend:
          known.length === 0
            ? `Add it under sources: ${piece.source}: { cite: …, seen: memory }.`
            : offer(piece.source, known, 'sources'),
      }
    }
  },
} satisfies Check
