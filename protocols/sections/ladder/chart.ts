import type { SectionChart, SectionMoment } from '../../runner/chart-parts.ts'
import { climb } from './climb.ts'
import type { LadderFields } from './keys.ts'
import { levelsOf } from './levels.ts'

const fieldsOf = (section: SectionMoment['section']) => section.fields as unknown as LadderFields

/** Whether the level at hand was accepted; null where that has no answer, or none was given yet. */
const verdict = ({ section, pass, holds }: SectionMoment): boolean | null =>
  pass === null ? null : holds(fieldsOf(section).accepted, pass)

const pathOf = (moment: SectionMoment): readonly string[] => moment.path().map(String)

/** The levels that there are here. */
const levelsAt = (moment: SectionMoment): readonly string[] =>
  levelsOf(fieldsOf(moment.section), moment.items, pathOf(moment), moment.holds)

/** The first level; null where nothing says it, or it is none of those that there are here. */
function firstOf(moment: SectionMoment): string | null {
  const { begin } = fieldsOf(moment.section)
  const first = typeof begin === 'string' ? begin : moment.text(begin.from)
  return first !== null && levelsAt(moment).includes(first) ? first : null
}

export const chart: SectionChart = {
  ordered: () => false,
  order: () => null,
  refuses: () => null,
  next: (moment) => {
    const { section, pass, count } = moment
    const { turns } = fieldsOf(section)
    if (pass === null) return firstOf(moment)
    const accepted = verdict(moment)
    const most = turns === undefined ? 1 : count(turns)
    if (accepted === null || most === null) return null
    return climb(fieldsOf(section), levelsAt(moment), pathOf(moment), accepted, most)
  },
  unclear: (moment) => {
    const { section, pass, items, holds } = moment
    const { where } = fieldsOf(section)
    if (pass !== null) return verdict(moment) === null ? [pass] : []
    const untold = where === undefined ? [] : items.filter((item) => holds(where, item) === null)
    return firstOf(moment) === null ? [...untold, null] : untold
  },
  /** Which levels are still to come shows only on the way. */
  due: (moment) => {
    const first = moment.pass === null ? firstOf(moment) : null
    return first === null ? [] : [first]
  },
  of: () => null,
  leftOut: () => [],
}
