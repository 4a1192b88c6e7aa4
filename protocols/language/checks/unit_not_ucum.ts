import type { Check } from '../check.ts'
import { judgeUnit } from '../units.ts'

/**
 * What it does: Every unit is a code of UCUM (ucum.org), the same letters that records and other programs
 * use.
 *
 * Why it matters: `lbs` may be a force or a mass, `sec` and `Nm` are no codes; a value with such a unit
 * can't be converted or sent.
 *
 * Example:
 *     unit: lbs
 *
 * Instead:
 *     unit: "[lbf_av]"
 */
export default {
  code: 'unit_not_ucum',
  severity: 'error',
  needs: [],
  *run({ draft }) {
    for (const { unit, at } of draft.units) {
      const { valid, suggestions } = judgeUnit(unit)
      if (valid) continue
      const [first, second] = suggestions
      const meant = second === undefined ? first : `${first} or ${second}`
      yield {
        at,
        message: `"${unit}" is no unit of UCUM.`,
        mend:
          meant === undefined ? 'Write a UCUM code, such as s, kgf, deg, cm or {count}.' : `Write ${meant}.`,
      }
    }
  },
} satisfies Check
