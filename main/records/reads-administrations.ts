import type { RunnerEvent } from '../../protocols/runner/events.ts'
import type { Database } from './database.ts'
import type { AdministrationRow, OrderRow, Reads, ScoreRow, SealRow } from './rows.ts'

type AdministrationReads = Pick<
  Reads,
  | 'administration'
  | 'administrationsOf'
  | 'administrationsOfVisit'
  | 'waitingFor'
  | 'ordersOf'
  | 'scoresOf'
  | 'sealOf'
  | 'sealBy'
>

interface Line extends Omit<AdministrationRow, 'rehearsal' | 'examiner' | 'enteredInError'> {
  readonly rehearsal: number
  readonly examiner: string
  readonly examinerName: string
  readonly enteredInError: number
}

interface ScoreLine extends Omit<ScoreRow, 'place' | 'over'> {
  readonly place: string
  readonly over: number
}

interface OrderLine {
  readonly administration: string
  readonly body: Uint8Array
}

type OrderBody = Extract<RunnerEvent, { kind: 'ordered' }>

const rowOf = ({ examiner, examinerName, rehearsal, enteredInError, ...line }: Line): AdministrationRow => ({
  ...line,
  examiner: { id: examiner, name: examinerName },
  rehearsal: rehearsal === 1,
  enteredInError: enteredInError === 1,
})

const columns = (inError: string) => `
  a.id, a.protocol, a.version, a.title, a.hash, a.source, a.wording, a.rehearsal, a.client,
  coalesce(c.name, '') AS clientName, a.visit, a.examiner, a.examiner_name AS examinerName,
  a.given_on AS "on", a.started_at AS startedAt, a.finished_at AS finishedAt, a.phase, a.note,
  ${inError} AS enteredInError, a.deviations, a.basis`

/** Newest first, as the log has them: ids of administrations are in the order in which they began. */
const NEWEST_FIRST = 'ORDER BY a.started_at DESC, a.id DESC'

export function readAdministrations(database: Database): AdministrationReads {
  const select = `SELECT ${columns('a.withdrawn')} FROM administration a LEFT JOIN client c ON c.id = a.client`
  const one = database.prepare<[string], Line>(`${select} WHERE a.id = ?`)
  const ofVisit = database.prepare<[string], Line>(`${select} WHERE a.visit = ? ${NEWEST_FIRST}`)
  const waiting = database.prepare<[string], Line>(
    `${select} WHERE a.examiner = ? AND a.note IS NULL AND a.withdrawn = 0 ${NEWEST_FIRST}`,
  )
  const ofClient = database.prepare<[string], Line>(
    `SELECT ${columns('(a.withdrawn OR NOT ac.current)')}
     FROM administration_client ac JOIN administration a ON a.id = ac.administration
     LEFT JOIN client c ON c.id = a.client
     WHERE ac.client = ? ${NEWEST_FIRST}`,
  )
  const orders = database.prepare<[string], OrderLine>(
    `SELECT a.id AS administration, e.body FROM administration a CROSS JOIN event e
     ON e.stream_kind = 'administration' AND e.stream = a.id
     WHERE a.protocol = ? AND a.withdrawn = 0 AND e.kind = 'ordered' AND e.body IS NOT NULL
     ORDER BY e.clock, e.device, e.sequence`,
  )
  const scores = database.prepare<[string], ScoreLine>(
    `SELECT administration, score, place, title, value, over, unit, decimals, better, missing
     FROM score WHERE administration = ? ORDER BY rowid`,
  )
  const seal = 'SELECT administration, code, at FROM seal WHERE'
  const sealOf = database.prepare<[string], SealRow>(`${seal} administration = ? ORDER BY clock DESC LIMIT 1`)
  const sealBy = database.prepare<[string], SealRow>(`${seal} code = ?`)
  return {
    administration(id) {
      const line = one.get(id)
      return line ? rowOf(line) : null
    },
    administrationsOf: (client) => ofClient.all(client).map(rowOf),
    administrationsOfVisit: (visit) => ofVisit.all(visit).map(rowOf),
    waitingFor: (user) => waiting.all(user).map(rowOf),
    ordersOf(protocol, section) {
      const last = new Map<string, OrderRow>()
      for (const { administration, body } of orders.all(protocol)) {
        const order: OrderBody = JSON.parse(Buffer.from(body).toString('utf8'))
        if (order.section !== section) continue
        const { items, rule } = order
        last.set(JSON.stringify([administration, order.place]), { administration, items, rule })
      }
      return [...last.values()]
    },
    sealOf: (administration) => sealOf.get(administration) ?? null,
    sealBy: (code) => sealBy.get(code) ?? null,
    scoresOf: (administration) =>
      scores
        .all(administration)
        .map((line) => ({ ...line, place: JSON.parse(line.place), over: line.over === 1 })),
  }
}
