import type { Check } from '../check.ts'
import { SIDE_NAMES } from '../convert/environment.ts'
import type { NameOf } from '../convert/names.ts'

/** The identifiers that the CEL specification reserves or uses as literals and operators. */
const CEL =
  'as break const continue else false for function if import in let loop package namespace null return true var void while'.split(
    ' ',
  )
const OURS = ['test', 'hands', 'raters', 'unknown', ...SIDE_NAMES]
const TEXT_KEYS =
  'title about precautions kit conditions happenings scores norms change cautions accommodations'.split(' ')
const IN_FORMULAS: readonly NameOf[] = ['step', 'section', 'rule', 'score', 'condition', 'list', 'property']
const IN_KEYS: readonly NameOf[] = ['step', 'rule', 'list']

/**
 * What it does: A name is no word that expressions or the language itself need: CEL's reserved words, the
 * names of sides, `hands`, `test`, and the top parts of text keys.
 *
 * Why it matters: The word would mean something else in a formula or a text key than the author's step.
 *
 * Example:
 *     - { timed: void, start: { said: go }, stop: { seen: home } }
 *
 * Instead:
 *     - { timed: spoilt, start: { said: go }, stop: { seen: home } }
 */
export default {
  code: 'name_reserved',
  severity: 'error',
  needs: [],
  *run({ names }) {
    for (const { name, of, at } of names) {
      const inFormulas = IN_FORMULAS.includes(of)
      if (inFormulas && CEL.includes(name)) {
        yield {
          at,
          message: `"${name}" is a reserved word of the expression language CEL.`,
          mend: 'Choose another name.',
        }
      } else if (inFormulas && (OURS.includes(name) || (of === 'property' && name === 'turn'))) {
        yield {
          at,
          message: `"${name}" already means something in every protocol.`,
          mend: 'Choose another name.',
        }
      } else if (IN_KEYS.includes(of) && TEXT_KEYS.includes(name)) {
        yield {
          at,
          message: `"${name}" is the first part of other texts' keys, so this ${of} cannot have it.`,
          mend: `Choose another name, such as ${name}_${of}.`,
        }
      }
    }
  },
} satisfies Check
