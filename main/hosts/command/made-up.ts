/** What made-up administrations of the command line have in common: the same bytes whenever they are given. */
import type { EventBody } from '../../../protocols/runner/events.ts'
import { PROGRAM_STAMP } from '../../program.ts'
import { localTime } from '../../records/index.ts'
import { say } from '../words.ts'
import type { FoundProtocol } from './find-protocol.ts'

const DAY = '2025-01-15'
const BEGIN = Date.parse(`${DAY}T09:00:00Z`)
export const uuid = (count: number): string =>
  `00000000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`
export const USER = uuid(0)

export const wallTime = (ms: number): string => localTime(BEGIN + ms, 0)

export function openedOf({
  protocol,
  disk,
  from,
}: FoundProtocol): Extract<EventBody, { readonly kind: 'opened' }> {
  return {
    kind: 'opened',
    protocol: {
      id: protocol.id,
      version: protocol.version,
      hash: disk.hash,
      language: protocol.language,
      wording: null,
      from,
    },
    program: PROGRAM_STAMP,
    rehearsal: true,
    visit: null,
    on: DAY,
    examiner: { id: USER, name: say('rehearse.examiner') },
  }
}
