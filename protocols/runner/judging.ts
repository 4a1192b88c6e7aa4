/** What the chart asks of the protocol's expressions, seen from where it stands. */
import { NOTHING_KNOWN } from '../client.ts'
import { evaluate } from '../language/expressions/index.ts'
import type { Evaluated, Expression } from '../language/expressions/types.ts'
import type { From, Protocol, Quantity } from '../language/model.ts'
import { convert } from '../language/units.ts'
import { scopeAt, type Standing } from '../scoring/scope.ts'
import type { Place } from './events.ts'
import { listOf } from './grown.ts'
import type { State } from './state.ts'

export interface Judging {
  standing(state: State): Standing
  value(state: State, expression: Expression, place: Place): Evaluated
  /** True, false, or null where the condition has no answer. */
  holds(state: State, condition: Expression, place: Place): boolean | null
  /** The text that an expression gives; null where it has no value. */
  text(state: State, expression: Expression, place: Place): string | null
  quantity(state: State, from: From<Quantity>, unit: string, place: Place): Quantified | null
  count(state: State, from: From<number>, place: Place): number | null
}

interface Quantified {
  readonly value: number
  readonly over: boolean
}

/** How the protocol's conditions stand: fixed by the file, told before the first trial, or as they usually are. */
function conditionsOf(protocol: Protocol, state: State): Readonly<Record<string, string>> {
  const stand: Record<string, string> = {}
  for (const { name, setBy, options, usual } of protocol.conditions) {
    const told = setBy === 'file' ? options[0]?.id : (state.prepared?.conditions[name] ?? usual)
    if (told !== undefined && told !== null) stand[name] = told
  }
  return stand
}

/** A bare number takes the unit that is asked for. */
const inUnit = (value: number, from: string | null, unit: string): number | null =>
  from === null || from === '1' ? value : convert(value, from, unit)

export function judgingOf(protocol: Protocol): Judging {
  const known = new WeakMap<State, Standing>()
  const standing = (state: State): Standing => {
    const before = known.get(state)
    if (before !== undefined) return before
    const now: Standing = {
      protocol,
      trials: listOf(state.trials),
      facts: state.facts ?? NOTHING_KNOWN,
      conditions: conditionsOf(protocol, state),
      orders: listOf(state.orders),
    }
    known.set(state, now)
    return now
  }
  const value = (state: State, expression: Expression, place: Place): Evaluated =>
    evaluate(expression, scopeAt(standing(state), place))
  const number = (state: State, expression: Expression, place: Place) => {
    const found = value(state, expression, place).value
    return typeof found === 'object' && found !== null && 'n' in found ? found : null
  }
  return {
    standing,
    value,
    holds: (state, condition, place) => {
      const found = value(state, condition, place).value
      return typeof found === 'boolean' ? found : null
    },
    text: (state, expression, place) => {
      const found = value(state, expression, place).value
      return typeof found === 'string' ? found : null
    },
    quantity: (state, from, unit, place) => {
      if ('is' in from) return within(inUnit(from.is.value, from.is.unit, unit), false)
      const found = number(state, from.from, place)
      const { type } = from.from
      return found && within(inUnit(found.n, type.is === 'number' ? type.unit : null, unit), found.over)
    },
    count: (state, from, place) => {
      const found = 'is' in from ? from.is : number(state, from.from, place)?.n
      return found === undefined || !Number.isFinite(found) ? null : Math.max(0, Math.floor(found))
    },
  }
}

const within = (value: number | null, over: boolean): Quantified | null =>
  value === null ? null : { value, over }
