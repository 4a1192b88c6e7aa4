/**
 * The names as an expression at a place sees them: the loops around it, conditions, every step's rows of its own
 * place, scores seen from there, and which hand is dominant or affected.
 */
import type { Side } from '../client.ts'
import { bool, none, number, text } from '../language/expressions/datum.ts'
import { evaluateDatum } from '../language/expressions/evaluate.ts'
import type { Datum, Expression, Scope } from '../language/expressions/types.ts'
import type { From, Item, Quantity } from '../language/model.ts'
import { turnKey } from '../language/passes.ts'
import { convert } from '../language/units.ts'
import type { Place } from '../runner/events.ts'
import { foundTable } from './found.ts'
import { listOf, outlineOf } from './outline.ts'
import { belongs, isRow, tableOf } from './rows.ts'
import { seenScore } from './seen-score.ts'
import type { Standing, Working } from './standing.ts'
import { isAffected, isDominant, SIDE_NAMES, sideNamed } from './sides.ts'

export type { Standing } from './standing.ts'

export function workingOn(standing: Standing): Working {
  const working: Working = {
    standing,
    outline: outlineOf(standing.protocol),
    scores: new Map(),
    scope: (place) => scopeIn(working, place),
  }
  return working
}

/** The names as an expression at `place` sees them. */
export const scopeAt = (standing: Standing, place: Place): Scope => workingOn(standing).scope(place)

function scopeIn(working: Working, place: Place): Scope {
  const read = new Map<string, Datum | null>()
  return {
    read(name) {
      const before = read.get(name)
      if (before !== undefined) return before
      const datum = lookUp(working, place, name)
      read.set(name, datum)
      return datum
    },
  }
}

function lookUp(working: Working, place: Place, name: string): Datum | null {
  const { standing, outline } = working
  const pass = Object.hasOwn(place, name) ? place[name] : undefined
  if (typeof pass === 'number') return number(pass)
  if (pass !== undefined) return itemOf(working, place, name, pass)
  const sideName = SIDE_NAMES.find((one) => one === name)
  if (sideName !== undefined) return sideNamed(sideName, standing.facts)
  const condition = conditionValue(standing, name)
  if (condition !== null) return condition
  const step = outline.steps.get(name)
  if (step !== undefined) {
    const trials = standing.trials.filter(
      (trial) => trial.step === name && isRow(trial) && belongs(trial.place, place),
    )
    return tableOf(step, trials, outline.tallies, (value, at, unit) => quantityAt(working, value, at, unit))
  }
  const section = outline.sections.get(name)
  const found =
    section && foundTable(working, section, place, (list, item) => itemProperties(standing, list, item))
  if (found) return found
  const score = outline.scores.get(name)
  return score === undefined ? null : seenScore(working, score, place)
}

/** A value of the file in `unit`, as seen from a place: fixed, or by an expression. */
function quantityAt(working: Working, value: From<Quantity>, place: Place, unit: string): Datum {
  if ('is' in value) return inUnit(number(value.is.value), value.is.unit, unit)
  const datum = evaluateDatum(value.from, working.scope(place))
  return inUnit(datum, unitOf(value.from), unit)
}

const unitOf = ({ type }: Expression): string =>
  type.is === 'number' && type.unit !== null ? type.unit : '1'

/** A bare number takes the unit asked for. */
function inUnit(datum: Datum, from: string, to: string): Datum {
  if (datum.is !== 'number' || from === '1' || from === to) return datum
  const n = convert(datum.n, from, to)
  return n === null ? none('wrong_unit', { unit: from }) : number(n, datum.over, datum.trials)
}

function conditionValue({ protocol, conditions }: Standing, name: string): Datum | null {
  const condition = protocol.conditions.find((one) => one.name === name)
  if (condition === undefined) return null
  const fixed = condition.setBy === 'file' ? condition.options[0]?.id : undefined
  const recorded = fixed ?? (Object.hasOwn(conditions, name) ? conditions[name] : undefined)
  const option = condition.options.find(({ id }) => id === recorded)
  if (option === undefined) return none('condition_unknown', { condition: name })
  if (typeof option.value === 'string') return text(option.value)
  // All values of a condition are read in the unit of its first, which is the unit its type has.
  const first = condition.options[0]?.value
  const unit = typeof first === 'object' ? first.unit : option.value.unit
  return inUnit(number(option.value.value), option.value.unit, unit)
}

function itemOf(working: Working, place: Place, loop: string, id: string): Datum {
  const { standing, outline } = working
  const turn = number(turnOf(working, place, loop, id))
  const list = listOf(outline, loop)
  if (list === 'hands') {
    const side: Side = id === 'left' ? 'left' : 'right'
    const { facts } = standing
    const fields = {
      id: text(id),
      affected: isAffected(side, facts),
      dominant: isDominant(side, facts),
      turn,
    }
    return { is: 'record', fields }
  }
  const items = list === null ? [] : (standing.protocol.lists[list] ?? [])
  return { is: 'record', fields: { ...propertiesOf(items, id), id: text(id), turn } }
}

const itemProperties = ({ protocol }: Standing, list: string, item: string) =>
  propertiesOf(protocol.lists[list] ?? [], item)

/** An item's own properties; quantities in the unit of the first item that has one, which is that of their type. */
function propertiesOf(items: readonly Item[], id: string): Record<string, Datum> {
  const fields: Record<string, Datum> = {}
  for (const [name, value] of Object.entries(items.find((one) => one.id === id)?.properties ?? {})) {
    if (typeof value === 'string') fields[name] = text(value)
    else if (typeof value === 'boolean') fields[name] = bool(value)
    else if (typeof value === 'number') fields[name] = number(value)
    else fields[name] = inUnit(number(value.value), value.unit, unitOfProperty(items, name) ?? value.unit)
  }
  return fields
}

function unitOfProperty(items: readonly Item[], name: string): string | null {
  const first = items.find(({ properties }) => Object.hasOwn(properties, name))?.properties[name]
  return typeof first === 'object' ? first.unit : null
}

/** Which pass this is, from 1: by the order recorded for the section here, else by the list. */
function turnOf({ standing, outline }: Working, place: Place, loop: string, id: string): number {
  const numbered = place[turnKey(loop)]
  if (typeof numbered === 'number') return numbered
  const order = standing.orders.findLast(
    (one) => one.section === loop && one.items.includes(id) && belongs(one.place, place),
  )
  const list = listOf(outline, loop)
  const items =
    order?.items ?? (list === null ? [] : (standing.protocol.lists[list] ?? []).map((one) => one.id))
  return Math.max(items.indexOf(id), 0) + 1
}
