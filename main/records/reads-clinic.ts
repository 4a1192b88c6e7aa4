import type { Database } from './database.ts'
import { protocolFilesOf } from './protocol-files.ts'
import type { Reads, UserRow, VerifiedNorm } from './rows.ts'

type ClinicReads = Pick<Reads, 'users' | 'user' | 'settings' | 'kit' | 'verifiedNorms' | 'protocolFiles'>

export function readClinic(database: Database): ClinicReads {
  const users = database.prepare<[], UserRow>('SELECT id, name FROM user ORDER BY name, id')
  const user = database.prepare<[string], UserRow>('SELECT id, name FROM user WHERE id = ?')
  const settings = database.prepare<[string], { settings: string }>(
    'SELECT settings FROM settings WHERE user = ?',
  )
  const kit = database.prepare<[string], { piece: string }>(
    'SELECT piece FROM kit WHERE protocol = ? ORDER BY id',
  )
  const norms = database.prepare<[string], VerifiedNorm>(
    `SELECT protocol, norm, table_hash AS "table", coalesce(user.name, verified_norm.user) AS by, at
     FROM verified_norm LEFT JOIN user ON user.id = verified_norm.user
     WHERE protocol = ? ORDER BY norm, at`,
  )
  return {
    users: () => users.all(),
    user: (id) => user.get(id) ?? null,
    settings(id) {
      const row = settings.get(id)
      return row ? JSON.parse(row.settings) : null
    },
    kit: (protocol) => kit.all(protocol).map((row) => JSON.parse(row.piece)),
    verifiedNorms: (protocol) => norms.all(protocol),
    protocolFiles: protocolFilesOf(database),
  }
}
