import type { PassId, SectionChart, SectionMoment } from '../../runner/chart-parts.ts'
import { absentHands, decide, namedOrders } from './orders.ts'
import type { ForEachFields } from './keys.ts'
import { refuse } from '../../runner/refuse.ts'

const fieldsOf = (section: SectionMoment['section']) => section.fields as unknown as ForEachFields

/** The items after the one at hand, in the order recorded for this place. */
function rest({ order, items, pass }: SectionMoment): readonly string[] {
  const all = order?.items ?? items
  return pass === null ? all : all.slice(all.indexOf(String(pass)) + 1)
}

/** The items after the one at hand for which the section is meant. */
function following(moment: SectionMoment): readonly string[] {
  const { where } = fieldsOf(moment.section)
  const left = rest(moment)
  return where === undefined ? left : left.filter((item) => moment.holds(where, item) === true)
}

/** The items that there are to give: all of the list, without hands that are absent. */
function present(moment: SectionMoment): readonly string[] {
  const absent = chart.leftOut(moment)
  return moment.items.filter((item) => !absent.includes(item))
}

export const chart: SectionChart = {
  /** Hands always take an order from the client's facts; other lists only where the file names one. */
  ordered: (section) => fieldsOf(section).in === 'hands' || namedOrders(fieldsOf(section)).length > 0,
  order: (moment, chance) => decide(fieldsOf(moment.section), moment, chance),
  refuses: (moment, items) => {
    const due = present(moment)
    const same = items.length === due.length && due.every((item) => items.includes(item))
    return same ? null : refuse('not_an_order', { section: moment.section.name, due: due.join(' ') })
  },
  next: (moment): PassId | null => following(moment)[0] ?? null,
  unclear: (moment, next) => {
    const { where } = fieldsOf(moment.section)
    if (where === undefined) return []
    const left = rest(moment)
    const between = next === null ? left : left.slice(0, left.indexOf(String(next)))
    return between.filter((item) => moment.holds(where, item) === null)
  },
  due: following,
  of: (moment) => following({ ...moment, pass: null }).length,
  leftOut: ({ section, facts }) => (fieldsOf(section).in === 'hands' ? absentHands(facts) : []),
}
