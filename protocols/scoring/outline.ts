/** What a protocol's steps and sections are called, found once for each protocol. */
import { keysOf, passesOf } from '../language/passes.ts'
import type { Node, Protocol, Score, Section, Step } from '../language/model.ts'

export interface Outline {
  readonly steps: ReadonlyMap<string, Step>
  readonly sections: ReadonlyMap<string, Section>
  /** What is inside a section: its steps; and the keys that the loops around it have in a place. */
  readonly inside: ReadonlyMap<
    string,
    { readonly steps: ReadonlySet<string>; readonly keys: readonly string[] }
  >
  /** The list that each loop goes through, by the loop's name. */
  readonly lists: ReadonlyMap<string, string>
  readonly scores: ReadonlyMap<string, Score>
  /** Happenings that are tallied: each is a column of every trial's table. */
  readonly tallies: readonly string[]
  /** Names of the steps whose rows a score rests on, by way of other scores too. */
  stepsUnder(score: Score): ReadonlySet<string>
}

const outlines = new WeakMap<Protocol, Outline>()

export function outlineOf(protocol: Protocol): Outline {
  const before = outlines.get(protocol)
  if (before !== undefined) return before
  const outline = drawn(protocol)
  outlines.set(protocol, outline)
  return outline
}

function drawn(protocol: Protocol): Outline {
  const steps = new Map<string, Step>()
  const sections = new Map<string, Section>()
  const lists = new Map<string, string>()
  const inside = new Map<string, { readonly steps: Set<string>; readonly keys: readonly string[] }>()
  const scores = new Map(protocol.scores.map((score) => [score.name, score]))
  const visit = (nodes: readonly Node[], around: readonly Section[]): void => {
    for (const node of nodes) {
      if (node.node === 'step') {
        steps.set(node.name, node)
        for (const { name } of around) inside.get(name)?.steps.add(node.name)
      }
      if (node.node !== 'section') continue
      sections.set(node.name, node)
      const keys = around.flatMap((section) => keysOf(passesOf(section, protocol.draws)))
      inside.set(node.name, { steps: new Set(), keys })
      const { loop, list = null } = passesOf(node, protocol.draws) ?? {}
      if (loop !== undefined && list !== null) lists.set(loop, list)
      visit(node.steps, [...around, node])
    }
  }
  visit(protocol.steps, [])
  const stepsUnder = (score: Score): ReadonlySet<string> => {
    const found = new Set<string>()
    const seen = new Set<string>()
    const open = [score]
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (seen.has(next.name)) continue
      seen.add(next.name)
      for (const name of [...next.value.reads, ...(next.needs?.reads ?? [])]) {
        if (steps.has(name)) found.add(name)
        for (const step of inside.get(name)?.steps ?? []) found.add(step)
        const further = scores.get(name)
        if (further !== undefined) open.push(further)
      }
    }
    return found
  }
  const tallies = protocol.happenings.flatMap(({ name, becomes }) => (becomes === 'tally' ? [name] : []))
  return { steps, sections, inside, lists, scores, tallies, stepsUnder }
}

/** Name of the list that a loop goes through; null for a loop that only counts its passes. */
export const listOf = (outline: Outline, loop: string): string | null => outline.lists.get(loop) ?? null
