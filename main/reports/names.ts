import type { Protocol, Text } from '../../protocols/language/model.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import { plain } from './figures.ts'
import { say } from './words.ts'

/** The protocol's own words for what it names; a name that has none is shown without underscores. */
export interface Names {
  /** How a condition stood: an option in its words, or a value such as `60 s`. */
  condition(name: string, option: string): string
  /** The number of a source in the list at the end, `[3]`, by how it is cited; the citation where it isn't there. */
  reference(cite: string): string
}

export function namesOf(protocol: Protocol, wordingFile: string | null): Names {
  const wording = wordingFor(protocol, wordingFile)
  const words = (text: Text) => textOf(protocol, wording, text).trim()
  return {
    condition(name, option) {
      const text = protocol.conditions
        .find((condition) => condition.name === name)
        ?.options.find((one) => one.id === option)?.text
      return text ? words(text) : plain(option)
    },
    reference(cite) {
      const index = protocol.sources.findIndex((source) => source.cite === cite)
      return index < 0 ? cite : say('reference', { number: String(index + 1) })
    },
  }
}
