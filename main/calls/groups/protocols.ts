import { Refused } from '../../contract/procedure.ts'
import { CLINIC, normVerified, textHash } from '../../records/index.ts'
import type { Group } from '../group.ts'
import { normTablesOf } from '../norm-tables.ts'
import { cardOf, lineOf } from '../protocol-cards.ts'

type Calls = 'protocols.list' | 'protocols.read' | 'norms.read' | 'norms.verify'

export const protocolCalls: Group<Calls> = ({ shelf, stores: { records }, push }) => ({
  'protocols.list': () => shelf.list().map(lineOf),
  'protocols.read': (key) => cardOf(shelf.sound(key)),
  'norms.read': (key) => normTablesOf(records, shelf.sound(key)),
  'norms.verify'({ protocol: key, norm: name, verified }, { user }) {
    const { protocol, files } = shelf.sound(key)
    const norm = protocol.norms.find((one) => one.name === name)
    const text = norm && files.get(norm.file)
    if (!norm || text === undefined) throw new Refused('no_such_norm', { norm: name })
    const mark = { protocol: protocol.id, norm: name, table: textHash(text), verified }
    records.append(CLINIC, [normVerified.make(mark)], user.id)
    push({ push: 'protocols' })
    return {}
  },
})
