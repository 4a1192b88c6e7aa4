import type { Protocol } from '../../protocols/language/model.ts'
import { type Records, textHash } from '../records/index.ts'

interface Mark {
  /** Name of the person who compared the table with its source. */
  readonly by: string
  readonly at: string
}

/** Norm name to who of the clinic verified that very table: a mark on an older text of it doesn't count. */
export function verifiedNorms(
  records: Records,
  { protocol, files }: { readonly protocol: Protocol; readonly files: ReadonlyMap<string, string> },
): ReadonlyMap<string, Mark> {
  const marks = records.read.verifiedNorms(protocol.id)
  return new Map(
    protocol.norms.flatMap((norm) => {
      const text = files.get(norm.file)
      const hash = text === undefined ? null : textHash(text)
      const mark = marks.find(({ norm: name, table }) => name === norm.name && table === hash)
      return mark ? [[norm.name, { by: mark.by, at: mark.at }] as const] : []
    }),
  )
}
