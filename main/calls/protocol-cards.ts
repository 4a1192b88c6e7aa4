/** Protocols in the contract's shapes: a line to choose from, a card with what is to be asked before the start. */
import type { z } from 'zod'
import type { Condition, Protocol, Text } from '../../protocols/language/model.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import type { protocolCard, protocolLine } from '../contract/shapes.ts'
import type { Shelved } from './shelf.ts'

type Line = z.infer<typeof protocolLine>
type Card = z.infer<typeof protocolCard>

/** The protocol's texts in its own words. */
function wordsOf(protocol: Protocol) {
  const wording = wordingFor(protocol, null)
  const say = (text: Text) => textOf(protocol, wording, text)
  return { say, orNull: (text: Text | null) => (text ? say(text) : null) }
}

export function lineOf({ key, from, protocol, problems }: Shelved): Line {
  if (!protocol) {
    const nothing = { id: null, version: null, purpose: '', suits: '', minutes: null, measures: [], kit: [] }
    return { key, from, sound: false, title: key, ...nothing, problems: [...problems] }
  }
  const { say } = wordsOf(protocol)
  const { about } = protocol
  return {
    key,
    from,
    sound: true,
    id: protocol.id,
    version: protocol.version,
    title: say(protocol.title),
    purpose: say(about.purpose),
    suits: say(about.suits),
    minutes: [...about.minutes],
    measures: [...about.measures],
    kit: protocol.kit.map((piece) => say(piece.text)),
    problems: [...problems],
  }
}

export function cardOf(shelved: Shelved & { readonly protocol: Protocol }): Card {
  const { protocol } = shelved
  const { say, orNull } = wordsOf(protocol)
  return {
    line: lineOf(shelved),
    floor: orNull(protocol.about.floor),
    ceiling: orNull(protocol.about.ceiling),
    precautions: protocol.precautions.map(({ id, ask, why }) => ({ id, ask: say(ask), why: orNull(why) })),
    conditions: protocol.conditions.map((condition) => conditionOf(condition, say)),
    kit: protocol.kit.map(({ id, text, check, registered }) => ({
      id,
      text: say(text),
      check: orNull(check),
      registered,
    })),
    accommodations: protocol.accommodations.map(({ id, text }) => ({ id, text: say(text) })),
    wordings: protocol.words.flatMap(({ file }) => (file === null ? [] : [file])),
    sources: protocol.sources.map((source) => ({ ...source })),
  }
}

function conditionOf({ name, setBy, options, usual }: Condition, say: (text: Text) => string) {
  return {
    name,
    // A condition has no text of its own in the language: its name is what the author calls it.
    title: name.replaceAll('_', ' '),
    setBy,
    options: options.map(({ id, text }) => ({ id, text: text ? say(text) : id })),
    usual,
  }
}
