/** Where the passes of sections stand in a place. */
import type { Passes } from '../sections/kind.ts'
import type { Protocol, Section } from './model.ts'
import { SECTION_KINDS } from './schema/kinds.ts'

/** The loop that a section is; null where it has no passes. */
export const passesOf = (section: Section, draws: Protocol['draws']): Passes | null =>
  SECTION_KINDS.get(section.kind)?.passes(section, draws) ?? null

/** Key of a place under which the number of the pass stands where an item may come more than once. */
export const turnKey = (loop: string): string => `${loop}_turn`

/** What a pass adds to the place around its section. `turn`: which pass it is, from 1. */
export function passAt(
  { loop, numbered }: Passes,
  pass: string | number,
  turn: number,
): Readonly<Record<string, string | number>> {
  return numbered ? { [loop]: pass, [turnKey(loop)]: turn } : { [loop]: pass }
}

/** The keys that a section's passes have in a place. */
export function keysOf(passes: Passes | null): readonly string[] {
  if (passes === null) return []
  return passes.numbered ? [passes.loop, turnKey(passes.loop)] : [passes.loop]
}
