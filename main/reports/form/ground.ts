/** What a protocol says before anybody is there to be tested: its words and values, as far as they are known. */
import { NOTHING_KNOWN } from '../../../protocols/client.ts'
import { evaluate } from '../../../protocols/language/expressions/index.ts'
import type { Expression } from '../../../protocols/language/expressions/types.ts'
import type { From, Protocol, Quantity, Section, Text, Wording } from '../../../protocols/language/model.ts'
import { passesOf } from '../../../protocols/language/passes.ts'
import { textOf, wordingFor } from '../../../protocols/language/words.ts'
import type { Place } from '../../../protocols/runner/events.ts'
import { scopeAt } from '../../../protocols/scoring/scope.ts'
import { plain } from '../figures.ts'

/** Condition name to how it stands. */
type Conditions = Readonly<Record<string, string>>

/** Where something is asked from, and how conditions stand there. */
interface Seen {
  readonly place?: Place
  readonly conditions?: Conditions
}

export interface FormGround {
  readonly protocol: Protocol
  readonly wording: Wording
  /** Conditions as they usually stand: what is asked for without others. */
  readonly usual: Conditions
  words(text: Text, seen?: Seen): string
  /** The value of an expression; null where it hangs on what is done. */
  value(from: From<Quantity> | From<number>, seen?: Seen): Quantity | null
  /** True, false, or null where it hangs on what is done, or on a condition that the file doesn't fix. */
  holds(condition: Expression, place: Place): boolean | null
  item(list: string, id: string): string
  option(condition: string, option: string): string
}

export const HANDS = 'hands'

/** True for a loop through the hands. */
export const isOverHands = (protocol: Protocol, section: Section): boolean =>
  passesOf(section, protocol.draws)?.list === HANDS

/** Conditions that the file fixes; with `usually`, the others as they usually stand. */
function conditionsOf(protocol: Protocol, usually: boolean): Conditions {
  return Object.fromEntries(
    protocol.conditions.flatMap(({ name, setBy, options, usual }) => {
      const stands = setBy === 'file' ? options[0]?.id : usually ? usual : null
      return stands ? [[name, stands] as const] : []
    }),
  )
}

export function groundOf(protocol: Protocol): FormGround {
  const wording = wordingFor(protocol, null)
  const fixed = conditionsOf(protocol, false)
  const usual = conditionsOf(protocol, true)
  const scope = ({ place = {}, conditions = usual }: Seen) =>
    scopeAt({ protocol, trials: [], facts: NOTHING_KNOWN, conditions, orders: [] }, place)
  const words = (text: Text, seen: Seen = {}) =>
    textOf(protocol, wording, text, scope(seen)).replace(/\s+/g, ' ').trim()
  return {
    protocol,
    wording,
    usual,
    words,
    value(from, seen = {}) {
      if ('is' in from) return typeof from.is === 'number' ? { value: from.is, unit: '1' } : from.is
      const { value } = evaluate(from.from, scope(seen))
      const { type } = from.from
      const unit = (type.is === 'number' ? type.unit : null) ?? '1'
      return value !== null && typeof value === 'object' && 'n' in value ? { value: value.n, unit } : null
    },
    holds(condition, place) {
      const { value } = evaluate(condition, scope({ place, conditions: fixed }))
      return typeof value === 'boolean' ? value : null
    },
    item(list, id) {
      const title = protocol.lists[list]?.find((one) => one.id === id)?.properties['title']
      if (typeof title !== 'string') return plain(id)
      const key = `${list}.${id}.title`
      return Object.hasOwn(wording.texts, key) ? words({ key }) : title.trim()
    },
    option(name, id) {
      const condition = protocol.conditions.find((one) => one.name === name)
      const text = condition?.options.find((one) => one.id === id)?.text
      return text ? words(text) : plain(id)
    },
  }
}
