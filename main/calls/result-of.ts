/** A result, worked out anew each time it is asked for. */
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import type { Result } from '../../protocols/scoring/result.ts'
import type { AdministrationRow } from '../records/index.ts'
import type { Clinic } from './clinic.ts'
import { earlierThan } from './earlier.ts'
import type { Store } from './keeping.ts'
import { signed } from './signed.ts'
import { verifiedNorms } from './verified-norms.ts'

export function resultOf(clinic: Clinic, store: Store, row: AdministrationRow): Result {
  const { live, stores } = clinic
  const { kept, administration } = live.read(store, row.id)
  const ofClient = row.client === null ? [] : stores[store].read.administrationsOf(row.client)
  const result = buildResult({
    protocol: kept.protocol,
    administration: givenOf(row.id, administration),
    standing: kept.runner.standing(administration),
    earlier: earlierThan(row, ofClient, (id) => live.read(store, id)),
    verified: new Map([...verifiedNorms(stores.records, kept)].map(([norm, { by }]) => [norm, by])),
  })
  return signed(clinic, row.client, result)
}
