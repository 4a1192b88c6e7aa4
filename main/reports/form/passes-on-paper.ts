/** The passes of loops that a form sets aside room for. */
import type { Expression } from '../../../protocols/language/expressions/types.ts'
import type { From, Section } from '../../../protocols/language/model.ts'
import { passAt, passesOf } from '../../../protocols/language/passes.ts'
import { SECTION_KINDS } from '../../../protocols/language/schema/kinds.ts'
import type { Place } from '../../../protocols/runner/events.ts'
import { plain } from '../figures.ts'
import { say } from '../words.ts'
import { type FormGround, isOverHands } from './ground.ts'

/** One pass of the loops around a step: its place, and what each loop calls it, outermost first. */
export interface PassOnPaper {
  readonly place: Place
  readonly labels: readonly string[]
}

/** No loop at all. */
export const ONE_PASS: readonly PassOnPaper[] = [{ place: {}, labels: [] }]

/** The most that a count can come to, however conditions stand; null where it hangs on what is done. */
function mostOf({ protocol, usual, value }: FormGround, from: From<number>, place: Place): number | null {
  const reads = 'is' in from ? [] : from.from.reads
  const others = protocol.conditions
    .filter(({ name, setBy }) => setBy !== 'file' && reads.includes(name))
    .flatMap(({ name, options }) => options.map(({ id }) => ({ ...usual, [name]: id })))
  const counts = [usual, ...others].flatMap((conditions) => value(from, { place, conditions })?.value ?? [])
  return counts.length ? Math.max(...counts) : null
}

/** The passes of one loop; the hands are left open, as a form has a column for each. */
export function passesInside(
  ground: FormGround,
  section: Section,
  { place, labels }: PassOnPaper,
): readonly PassOnPaper[] {
  const { protocol, item } = ground
  const passes = passesOf(section, protocol.draws)
  if (passes === null || isOverHands(protocol, section)) return [{ place, labels }]
  const { loop, list } = passes
  const count = SECTION_KINDS.get(section.kind)?.most?.(section, protocol.draws, (from) =>
    mostOf(ground, from, place),
  )
  if (typeof count === 'number') {
    return Array.from({ length: count }, (_, index) => {
      const label = { loop: plain(loop), number: String(index + 1) }
      return list === null
        ? { place: { ...place, [loop]: index + 1 }, labels: [...labels, say('where.pass', label)] }
        : { place, labels: [...labels, say('form.drawn', label)] }
    })
  }
  const where = section.fields['where'] as Expression | undefined
  return (protocol.lists[list ?? ''] ?? []).flatMap(({ id }) => {
    const there = { ...place, ...passAt(passes, id, 1) }
    const isLeftOut = where !== undefined && ground.holds(where, there) === false
    return isLeftOut ? [] : [{ place: there, labels: [...labels, item(list ?? '', id)] }]
  })
}

/** The passes of loops one within the other. What has but one pass needs no name. */
export const passesOnPaper = (ground: FormGround, loops: readonly Section[]): readonly PassOnPaper[] =>
  loops.reduce(
    (found, loop) =>
      found.flatMap((one) => {
        const inside = passesInside(ground, loop, one)
        return inside.length === 1 ? inside.map(({ place }) => ({ place, labels: one.labels })) : inside
      }),
    ONE_PASS,
  )
