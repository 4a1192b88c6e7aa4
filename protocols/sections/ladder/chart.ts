import type { SectionChart, SectionMoment } from '../../runner/chart-parts.ts'
import { climb } from './climb.ts'
import type { LadderFields } from './keys.ts'

const fieldsOf = (section: SectionMoment['section']) => section.fields as unknown as LadderFields

/** Whether the level at hand was accepted; null where that has no answer, or none was given yet. */
const verdict = ({ section, pass, holds }: SectionMoment): boolean | null =>
  pass === null ? null : holds(fieldsOf(section).accepted, pass)

export const chart: SectionChart = {
  ordered: () => false,
  order: () => null,
  refuses: () => null,
  next: (moment) => {
    const { section, pass, items, path, count } = moment
    const { begin, turns } = fieldsOf(section)
    if (pass === null) return begin
    const accepted = verdict(moment)
    const most = turns === undefined ? 1 : count(turns)
    if (accepted === null || most === null) return null
    return climb(fieldsOf(section), items, path().map(String), accepted, most)
  },
  unclear: (moment) => (moment.pass !== null && verdict(moment) === null ? [moment.pass] : []),
  /** Which levels are still to come shows only on the way. */
  due: ({ section, pass }) => (pass === null ? [fieldsOf(section).begin] : []),
  of: () => null,
  leftOut: () => [],
}
