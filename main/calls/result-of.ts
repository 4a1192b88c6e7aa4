/** A result, worked out anew each time it is asked for. */
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import type { Result } from '../../protocols/scoring/result.ts'
import { type AdministrationRow, textHash } from '../records/index.ts'
import type { Clinic } from './clinic.ts'
import { earlierThan } from './earlier.ts'
import type { Kept } from './kept.ts'
import type { Store } from './keeping.ts'

export function resultOf(clinic: Clinic, store: Store, row: AdministrationRow): Result {
  const { live, stores } = clinic
  const { kept, administration } = live.read(store, row.id)
  const ofClient = row.client === null ? [] : stores[store].read.administrationsOf(row.client)
  return buildResult({
    protocol: kept.protocol,
    administration: givenOf(row.id, administration),
    standing: kept.runner.standing(administration),
    earlier: earlierThan(row, ofClient, (id) => live.read(store, id)),
    verified: verifiedIn(clinic, kept),
  })
}

/** Norm name to who of the clinic verified that very table: a mark on an older text of it doesn't count. */
function verifiedIn({ stores: { records } }: Clinic, { protocol, files }: Kept): ReadonlyMap<string, string> {
  const marks = records.read.verifiedNorms(protocol.id)
  return new Map(
    protocol.norms.flatMap((norm) => {
      const text = files.get(norm.file)
      const mark =
        text === undefined
          ? undefined
          : marks.find(({ norm: name, table }) => name === norm.name && table === textHash(text))
      return mark ? [[norm.name, mark.by] as const] : []
    }),
  )
}
