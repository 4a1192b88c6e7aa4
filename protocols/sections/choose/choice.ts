import type { Choice, SectionMoment } from '../../runner/chart-parts.ts'
import type { ChooseFields } from './keys.ts'

/**
 * The first case whose condition holds, `otherwise` where none does. A condition without an answer ends the search:
 * whether its case was meant can't be told, and `otherwise` is for conditions that don't hold, not for ones that
 * nobody can answer. Then nothing is given, and that is said.
 */
export function choice({ section, holds }: SectionMoment): Choice {
  const { cases, otherwise } = section.fields as unknown as ChooseFields
  for (const { when, name } of cases) {
    const verdict = holds(when, null)
    if (verdict === null) return { part: null, unclear: true }
    if (verdict) return { part: name, unclear: false }
  }
  return { part: otherwise, unclear: false }
}
