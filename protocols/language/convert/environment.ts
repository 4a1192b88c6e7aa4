/** What an expression may read at its place, with types: the loops around it, tables, conditions and scores. */
import type { Environment, ValueType } from '../expressions/index.ts'
import { type Condition, type Node, OUTCOMES, type Score, type Section, type Step } from '../model.ts'
import { SECTION_KINDS, STEP_KINDS } from '../schema/kinds.ts'
import type { Draft } from './draft.ts'

const SIDES = ['right', 'left']
/** Names that stand for the side they are true of, or for nothing where it isn't known. */
export const SIDE_NAMES = ['dominant', 'nondominant', 'affected', 'unaffected'] as const

/** The environments of a draft; scores are known to it once their formula was checked. */
export class Environments {
  readonly #draft: Draft
  readonly #common: Readonly<Record<string, ValueType>>
  readonly #loops: ReadonlyMap<string, Section>
  readonly #scores = new Map<Score, ValueType>()

  constructor(draft: Draft) {
    this.#draft = draft
    const sections = nodesWithin(draft.steps).filter((node) => node.node === 'section')
    this.#loops = new Map(sections.map((section) => [section.name, section]))
    const common: Record<string, ValueType> = {}
    for (const name of SIDE_NAMES) common[name] = { is: 'text', oneOf: SIDES }
    for (const condition of draft.conditions) common[condition.name] = conditionType(condition)
    for (const step of nodesWithin(draft.steps).filter((node) => node.node === 'step')) {
      const table = tableType(step)
      if (table) common[step.name] = table
    }
    this.#common = common
  }

  /** A score's formula was checked and gives this. */
  know(score: Score, type: ValueType): void {
    this.#scores.set(score, type)
  }

  /** Names at a place: inside these sections, or worked out for each of these loops. */
  at(around: readonly Section[], each: readonly string[]): Environment {
    const environment: Record<string, ValueType> = { ...this.#common }
    const loops = [...around, ...each.flatMap((name) => this.#loops.get(name) ?? [])]
    for (const [score, type] of this.#scores) {
      const missing = score.each.filter((name) => !loops.some((loop) => loop.name === name))
      environment[score.name] = missing.reduceRight((of, by) => this.#mapType(by, of), type)
    }
    for (const section of loops) {
      const loop = SECTION_KINDS.get(section.kind)?.loop(section, this.#draft.lists)
      if (loop) environment[loop.name] = loop.type
    }
    return environment
  }

  #mapType(by: string, of: ValueType): ValueType {
    const section = this.#loops.get(by)
    const list = typeof section?.fields.in === 'string' ? section.fields.in : null
    if (list === null) return { is: 'map', by, of }
    const keys = list === 'hands' ? SIDES : (this.#draft.lists[list] ?? []).map(({ id }) => id)
    return { is: 'map', by, of, keys }
  }
}

/** A step's table as an expression sees it: its columns, each a list of the rows at the place. */
function tableType(step: Step): ValueType | null {
  const columns = STEP_KINDS.get(step.kind)?.columns(step) ?? {}
  if (Object.keys(columns).length === 0) return null
  const row: Readonly<Record<string, ValueType>> = { ...columns, outcome: { is: 'text', oneOf: OUTCOMES } }
  const lists = Object.entries(row).map(([name, of]) => [name, { is: 'list', of }] as const)
  return {
    is: 'record',
    fields: { ...Object.fromEntries(lists), rows: { is: 'list', of: { is: 'record', fields: row } } },
  }
}

/** An option's id is a text, a bare number a number, a quantity a number with its unit. */
function conditionType({ options }: Condition): ValueType {
  const texts = options.filter(({ value }) => typeof value === 'string').map(({ id }) => id)
  if (texts.length > 0 || options.length === 0) return { is: 'text', oneOf: texts }
  const [first] = options
  const unit = first && typeof first.value !== 'string' ? first.value.unit : '1'
  return { is: 'number', unit: unit === '1' ? null : unit }
}

/** A node and all within it, in the order of the file. */
export function nodesWithin(nodes: readonly Node[]): readonly Node[] {
  return nodes.flatMap((node) => (node.node === 'section' ? [node, ...nodesWithin(node.steps)] : [node]))
}
