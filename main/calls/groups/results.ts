import { Refused } from '../../contract/procedure.ts'
import type { AdministrationRow } from '../../records/index.ts'
import { type Person, renderReport, type ReportInput, shortText } from '../../reports/index.ts'
import type { Clinic } from '../clinic.ts'
import type { Group } from '../group.ts'
import { historyOf } from '../history-of.ts'
import { inSight } from '../in-sight.ts'
import type { Store } from '../keeping.ts'
import { resultOf } from '../result-of.ts'
import { signed } from '../signed.ts'

/** Letters of an administration's id that tell two reports of one day apart in a folder. */
const TELLING = 8

type Calls = 'administrations.result' | 'administrations.report' | 'administrations.note'

export const resultCalls: Group<Calls> = (clinic) => ({
  'administrations.result'({ store, id }) {
    const row = inSight(clinic, store, id)
    const result = resultOf(clinic, store, row)
    return {
      result,
      shortText: row.note ?? shortText(result),
      noteTaken: row.note !== null,
      seal: sealOf(clinic, store, id),
    }
  },
  async 'administrations.report'({ store, id }, { progress }) {
    const row = inSight(clinic, store, id)
    // A page of what is not on disk yet would outlive what it tells of.
    if (!clinic.live.isSaved(store, id)) throw new Refused('not_saved')
    await progress(0, 'gathering')
    const { kept, administration } = clinic.live.read(store, id)
    const records = clinic.stores[store]
    const input = {
      result: resultOf(clinic, store, row),
      protocol: kept.protocol,
      view: signed(clinic, row.client, kept.runner.view(administration, id)),
      person: personOf(clinic, row),
      clinic: '',
      demo: clinic.demo,
      history: row.client === null ? [] : historyOf(records, row.client, row.protocol),
      seal: sealOf(clinic, store, id),
      now: records.now(),
    }
    await progress(0.3, 'typesetting')
    const pdf = renderReport(input)
    return {
      fileName: `${row.on}-${row.protocol}-${id.slice(-TELLING)}.pdf`,
      pdfBase64: pdf.toString('base64'),
    }
  },
  'administrations.note'({ store, id, text }, { user }) {
    inSight(clinic, store, id)
    const acted = clinic.live.act(store, id, { kind: 'noted', text }, user.id)
    if (!acted.taken) throw new Refused('not_finished')
    return { noteTaken: true }
  },
})

function sealOf({ stores }: Clinic, store: Store, id: string): ReportInput['seal'] {
  const seal = stores[store].read.sealOf(id)
  return seal && { code: seal.code, at: seal.at }
}

function personOf({ stores: { records } }: Clinic, { client }: AdministrationRow): Person | null {
  const found = client === null ? null : records.read.client(client)
  if (!found) return null
  const { name, number, secondIdentifier, facts } = found.profile
  return { name, number, secondIdentifier, born: facts.birth }
}
