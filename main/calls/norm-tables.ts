/** A protocol's norm tables as a person compares them with their source: every row, and who has done so. */
import type { z } from 'zod'
import type { Norm, Protocol, Text } from '../../protocols/language/model.ts'
import { textOf, wordingFor } from '../../protocols/language/words.ts'
import type { normTable } from '../contract/shapes.ts'
import type { Records } from '../records/index.ts'
import type { Shelved } from './shelf.ts'
import { verifiedNorms } from './verified-norms.ts'

type Sound = Shelved & { readonly protocol: Protocol }

export function normTablesOf(records: Records, shelved: Sound): z.infer<typeof normTable>[] {
  const { protocol } = shelved
  const wording = wordingFor(protocol, null)
  const say = (text: Text) => textOf(protocol, wording, text)
  const marks = verifiedNorms(records, shelved)
  return protocol.norms.map((norm) => ({
    norm: norm.name,
    title: say(norm.title),
    population: say(norm.population),
    score: scoreTitle(protocol, norm, say),
    unit: norm.unit,
    file: norm.file,
    source: sourceOf(protocol, norm),
    rows: norm.rows.map((row) => ({ ...row })),
    verified: marks.get(norm.name) ?? null,
  }))
}

function scoreTitle(protocol: Protocol, norm: Norm, say: (text: Text) => string): string {
  const score = protocol.scores.find(({ name }) => name === norm.of)
  return score ? say(score.title) : norm.of
}

function sourceOf(protocol: Protocol, norm: Norm): { cite: string; note: string } {
  const source = protocol.sources.find(({ id }) => id === norm.source)
  return { cite: source?.cite ?? norm.source, note: source?.note ?? '' }
}
