import type { PassId, SectionChart, SectionMoment } from '../../runner/chart-parts.ts'
import { absentHands, decide, namedOrders } from './orders.ts'
import { canGive, drawFrom, sizeOf } from './draw.ts'
import type { ForEachFields } from './keys.ts'
import { refuse } from '../../runner/refuse.ts'

const fieldsOf = (section: SectionMoment['section']) => section.fields as unknown as ForEachFields

/** How many items one pass through a drawn list takes. */
const taken = ({ section, draw }: SectionMoment): number =>
  fieldsOf(section).take ?? (draw === null ? 0 : sizeOf(draw))

/** What was drawn before from the bag: a section that takes all of it begins a new one each time. */
const bagOf = (moment: SectionMoment): readonly string[] =>
  fieldsOf(moment.section).take === undefined ? [] : moment.drawn()

/** All items of a drawn list, kind by kind: what is due as long as nothing was drawn. */
const undrawn = ({ section, draw }: SectionMoment): readonly string[] =>
  draw === null || fieldsOf(section).take !== undefined
    ? []
    : Object.entries(draw.counts).flatMap(([item, count]) => Array.from({ length: count }, () => item))

/** The items after the one at hand, in the order recorded for this place. */
function rest(moment: SectionMoment): readonly string[] {
  const { order, items, pass, draw, turn } = moment
  if (draw !== null) return (order?.items ?? undrawn(moment)).slice(turn)
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
  /** Hands always take an order from the client's facts, drawn lists a draw; other lists only where the file names one. */
  ordered: (section, draws) => {
    const { in: list } = fieldsOf(section)
    return list === 'hands' || Object.hasOwn(draws, list) || namedOrders(fieldsOf(section)).length > 0
  },
  order: (moment, chance) => {
    const { draw, section } = moment
    if (draw === null) return decide(fieldsOf(section), moment, chance)
    return { items: drawFrom(draw, bagOf(moment), taken(moment), chance.random), rule: 'drawn' }
  },
  refuses: (moment, items) => {
    const { draw } = moment
    const due = present(moment)
    const fits =
      draw === null
        ? items.length === due.length && due.every((item) => items.includes(item))
        : items.length === taken(moment) && canGive(draw, bagOf(moment), items)
    return fits ? null : refuse('not_an_order', { section: moment.section.name, due: due.join(' ') })
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
  of: (moment) => following({ ...moment, pass: null, turn: 0 }).length,
  leftOut: ({ section, facts }) => (fieldsOf(section).in === 'hands' ? absentHands(facts) : []),
}
