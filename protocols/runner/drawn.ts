/** What sections that may take an item more than once have taken so far. */
import type { Place } from './events.ts'
import { listOf } from './grown.ts'
import type { PassId } from './chart-parts.ts'
import { isPartOf } from './places.ts'
import type { State } from './state.ts'

/** The passes of a section in one place, as they were taken. */
export function pathOf(state: State, section: string, around: Place): readonly PassId[] {
  return listOf(state.judged).flatMap(({ rule, place, verdict }) =>
    rule === section && isPartOf(around, place) && verdict !== null && typeof verdict !== 'boolean'
      ? [verdict]
      : [],
  )
}

/** What was drawn by these sections before; where each pass of a loop has a bag of its own, from that one. */
export function drawnBefore(state: State, sections: ReadonlySet<string>, bag: Place): readonly string[] {
  return listOf(state.orders).flatMap(({ section, place, items }) =>
    sections.has(section) && isPartOf(bag, place) ? items : [],
  )
}
