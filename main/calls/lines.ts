/** Records as the lists of a screen show them. */
import type { z } from 'zod'
import type { Birth } from '../../protocols/client.ts'
import type { administrationLine, clientLine } from '../contract/shapes.ts'
import type { AdministrationRow, ClientRow } from '../records/index.ts'

export const administrationLineOf = (row: AdministrationRow): z.infer<typeof administrationLine> => ({
  id: row.id,
  protocol: { id: row.protocol, version: row.version, title: row.title },
  client: row.client,
  clientName: row.clientName,
  examiner: row.examiner.name,
  on: row.on,
  phase: row.phase,
  noteTaken: row.note !== null,
  enteredInError: row.enteredInError,
})

/** When somebody was born, as exactly as it is known: `1951-03-09`, `1951-03`, `1951`; an age told; empty. */
function bornOf(birth: Birth): string {
  if (birth.known === 'date') return birth.date
  if (birth.known === 'month') return `${birth.year}-${String(birth.month).padStart(2, '0')}`
  if (birth.known === 'year') return String(birth.year)
  return birth.known === 'told' ? `${birth.years} (${birth.on})` : ''
}

export const clientLineOf = ({ id, profile }: ClientRow): z.infer<typeof clientLine> => ({
  id,
  name: profile.name,
  number: profile.number,
  secondIdentifier: profile.secondIdentifier,
  born: bornOf(profile.facts.birth),
})
