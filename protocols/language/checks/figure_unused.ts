import type { Check } from '../check.ts'
import { stepsOf } from '../structure.ts'
import { figuresOf } from '../convert/protocol.ts'

/**
 * What it does: Each figure in the folder is shown by some step.
 *
 * Why it matters: A figure that nobody sees is one that somebody forgot to name.
 *
 * Example:
 *     figures/grip.svg, and no step with figure: grip
 *
 * Instead:
 *     - { position: seated, figure: grip }
 */
export default {
  code: 'figure_unused',
  severity: 'advice',
  needs: ['steps'],
  *run({ draft }) {
    const used = new Set(stepsOf(draft).map(({ node }) => node.figure))
    const figures = Object.keys(figuresOf(draft))
    // A figure that isn't there is told by itself; which one it stands for can't be known.
    if ([...used].some((name) => name !== null && !figures.includes(name))) return
    for (const name of figures) {
      if (used.has(name)) continue
      yield {
        at: { file: `figures/${name}.svg`, start: 0, end: 0 },
        message: 'No step shows this figure.',
        mend: `Name it in a step: figure: ${name}.`,
      }
    }
  },
} satisfies Check
