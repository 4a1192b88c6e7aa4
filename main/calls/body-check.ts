/** What the runner can't know of an act: who works here, and which days have come. */
import type { EventBody } from '../../protocols/runner/events.ts'
import { Refused } from '../contract/procedure.ts'
import type { Clinic } from './clinic.ts'
import { checkPast } from './profile-check.ts'

type Of<K extends string> = Extract<EventBody, { kind: K }>

const isReattributed = (body: EventBody): body is Of<'reattributed'> => body.kind === 'reattributed'
const isPrepared = (body: EventBody): body is Of<'prepared'> => body.kind === 'prepared'

/**
 * The body as it may be written: an examiner by the name that is on record.
 * @throws Refused `no_such_user`, `date_impossible`, `date_in_future`
 */
export function checkedBody({ stores, today }: Pick<Clinic, 'stores' | 'today'>, body: EventBody): EventBody {
  if (isPrepared(body)) {
    const answers = [
      ...Object.values(body.precautions),
      ...body.restrictions.map(({ clearance }) => clearance),
    ]
    for (const answer of answers) if (answer.answer === 'cleared') checkPast('cleared', answer.on, today())
    return body
  }
  if (!isReattributed(body)) return body
  if (body.on !== null) checkPast('on', body.on, today())
  if (body.examiner === null) return body
  const examiner = stores.records.read.user(body.examiner.id)
  if (!examiner) throw new Refused('no_such_user')
  return { ...body, examiner: { id: examiner.id, name: examiner.name } }
}
