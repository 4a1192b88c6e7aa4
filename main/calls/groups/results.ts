import { Refused } from '../../contract/procedure.ts'
import type { Group } from '../group.ts'
import { inSight } from '../in-sight.ts'
import { resultOf } from '../result-of.ts'

export const resultCalls: Group<
  'administrations.result' | 'administrations.report' | 'administrations.note'
> = (clinic) => ({
  'administrations.result'({ store, id }) {
    const row = inSight(clinic, store, id)
    return { result: resultOf(clinic, store, row), shortText: '', noteTaken: row.note !== null }
  },
  'administrations.report'() {
    throw new Refused('not_finished')
  },
  'administrations.note'({ store, id, text }, { user }) {
    inSight(clinic, store, id)
    const acted = clinic.live.act(store, id, { kind: 'noted', text }, user.id)
    if (!acted.saved) throw new Refused('not_saved')
    if (!acted.taken) throw new Refused('not_finished')
    return { noteTaken: true }
  },
})
