import { Refused } from '../../contract/procedure.ts'
import { CLINIC, kitRegistered } from '../../records/index.ts'
import type { Group } from '../group.ts'
import { isCalendarDate } from '../profile-check.ts'

export const kitCalls: Group<'kit.list' | 'kit.register'> = ({ shelf, stores: { records }, push }) => ({
  'kit.list': ({ protocol }) => records.read.kit(protocol),
  'kit.register'({ protocol, piece }, { user }) {
    const known = shelf
      .named(protocol)
      .some((one) => one.protocol.kit.some((item) => item.id === piece.item && item.registered))
    if (!known) throw new Refused('no_such_kit', { item: piece.item })
    for (const field of ['lastCheck', 'nextCheck'] as const) {
      const given = piece[field]
      if (given && !isCalendarDate(given)) throw new Refused('date_impossible', { field, given })
    }
    const kept = { ...piece, id: piece.id ?? records.newId() }
    records.append(CLINIC, [kitRegistered.make({ protocol, piece: kept })], user.id)
    push({ push: 'clinic' })
    return kept
  },
})
