/** What an expression may read at its place, with types: the loops around it, tables, conditions and scores. */
import type { Environment, ValueType } from '../expressions/index.ts'
import { type Condition, OUTCOMES, type Score, type Section, type Step } from '../model.ts'
import { passesOf, turnKey } from '../passes.ts'
import { SECTION_KINDS, STEP_KINDS } from '../schema/kinds.ts'
import { sectionsOf, stepsOf } from '../structure.ts'
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
    this.#loops = new Map(
      sectionsOf(draft).map(({ node }) => [passesOf(node, draft.draws)?.loop ?? node.name, node]),
    )
    const common: Record<string, ValueType> = {}
    for (const name of SIDE_NAMES) common[name] = { is: 'text', oneOf: SIDES }
    for (const condition of draft.conditions) common[condition.name] = conditionType(condition)
    const tallies = draft.happenings.filter(({ becomes }) => becomes === 'tally').map((each) => each.name)
    for (const { node: section, around } of sectionsOf(draft)) {
      const found = SECTION_KINDS.get(section.kind)?.found
      const passes = Object.fromEntries(around.flatMap((each) => this.#passTypes(each)))
      const list = passesOf(section, draft.draws)?.list ?? ''
      if (found && draft.lists[list] !== undefined)
        common[section.name] = tableOf(found.columns(section, draft.lists), passes)
    }
    for (const { node: step, around } of stepsOf(draft)) {
      const passes = around.flatMap((section) => this.#passTypes(section))
      const table = tableType(step, Object.fromEntries(passes), tallies)
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
      const missing = score.each.filter((name) => !loops.includes(this.#loops.get(name) as Section))
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
    const keys = section ? this.#idsOf(section) : null
    return keys === null ? { is: 'map', by, of } : { is: 'map', by, of, keys }
  }

  /** Ids of the list that a section goes through; null where it only counts its passes, or nothing is known of it. */
  #idsOf(section: Section): readonly string[] | null {
    const list = passesOf(section, this.#draft.draws)?.list ?? null
    if (list === null) return null
    return list === 'hands' ? SIDES : (this.#draft.lists[list]?.map(({ id }) => id) ?? null)
  }

  /** What a row has in the columns of a loop around its step: the item's id, or the number of the pass. */
  #passTypes(section: Section): readonly (readonly [string, ValueType])[] {
    const passes = passesOf(section, this.#draft.draws)
    if (passes === null) return []
    const oneOf = this.#idsOf(section)
    const number: ValueType = { is: 'number', unit: null }
    const item: ValueType = oneOf === null ? { is: 'text' } : { is: 'text', oneOf }
    // Of a list that isn't known it isn't known either whether it is drawn.
    const isUnknown = passes.list !== null && oneOf === null
    return [
      [passes.loop, passes.list === null ? number : item],
      ...(passes.numbered || isUnknown ? ([[turnKey(passes.loop), number]] as const) : []),
    ]
  }
}

/**
 * A step's table as an expression sees it: its columns, how often each tallied happening was seen, each a list of the
 * rows at the place, and the rows themselves, which have the loops around the step as columns too
 * (`r.task == 'far_thin'`).
 */
function tableType(
  step: Step,
  passes: Readonly<Record<string, ValueType>>,
  tallies: readonly string[],
): ValueType | null {
  const columns = STEP_KINDS.get(step.kind)?.columns(step) ?? {}
  if (Object.keys(columns).length === 0) return null
  const seen = tallies.map((name): [string, ValueType] => [name, { is: 'number', unit: '{count}' }])
  return tableOf({ ...Object.fromEntries(seen), ...columns }, passes)
}

function tableOf(
  columns: Readonly<Record<string, ValueType>>,
  passes: Readonly<Record<string, ValueType>>,
): ValueType {
  const outcome: ValueType = { is: 'text', oneOf: OUTCOMES }
  const read: Readonly<Record<string, ValueType>> = { ...columns, outcome }
  const row = { ...passes, ...read }
  const lists = Object.entries(read).map(([name, of]) => [name, { is: 'list', of }] as const)
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
