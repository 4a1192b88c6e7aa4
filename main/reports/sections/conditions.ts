import type { Clearance, KitPiece, VisitConditions } from '../../../protocols/runner/events.ts'
import { day, plain } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import type { Names } from '../names.ts'
import { type Block, heading, lines, paragraph } from '../page.ts'
import { say } from '../words.ts'

function kitWords(piece: KitPiece): string {
  const name = `${plain(piece.item)} “${piece.ownName}”`
  if (!piece.lastCheck) return say('kit.unchecked', { name })
  const next = piece.nextCheck ? day(piece.nextCheck) : 'none'
  return say('kit', { name, day: day(piece.lastCheck), next })
}

/** How things stood at this visit; what was left empty is left out. */
function visitWords(visit: VisitConditions): string[] {
  const written = [
    ['visit.splint', visit.splint],
    ['visit.seat', visit.seat],
    ['visit.helper', visit.helper],
    ['visit.since_dose', visit.sinceDose],
  ] as const
  return [
    ...written.flatMap(([key, value]) => (value ? [say(key, { value })] : [])),
    ...(visit.glasses === 'unknown' ? [] : [say('visit.glasses', { value: visit.glasses })]),
    ...(visit.hearingAid === 'unknown' ? [] : [say('visit.hearing_aid', { value: visit.hearingAid })]),
    ...(visit.tiredness === null ? [] : [say('visit.tiredness', { value: visit.tiredness })]),
  ]
}

const clearanceWords = (what: string, clearance: Clearance): string =>
  say('clearance', {
    what: what.replace(/[?.]$/, ''),
    answer: clearance.answer,
    by: clearance.answer === 'cleared' ? clearance.by : '',
    day: clearance.answer === 'cleared' ? day(clearance.on) : '',
  })

/** Kit, settings and circumstances that it was given with. */
export function conditionsOf({ result, view }: ReportInput, names: Names): Block[] {
  const { prepared } = view
  const settings = result.conditions.map((condition) =>
    say('condition', {
      name: plain(condition.name),
      value: condition.text ?? names.condition(condition.name, condition.value),
    }),
  )
  const pain =
    prepared && (prepared.painNow === null ? say('pain.unknown') : say('pain', { pain: prepared.painNow }))
  const told = [
    settings.join('; '),
    (prepared?.kit ?? []).map(kitWords).join('; '),
    [...(pain ? [pain] : []), ...(prepared ? visitWords(prepared.visit) : [])].join('; '),
  ].filter(Boolean)
  return told.length ? [heading(say('conditions')), ...lines(told)] : []
}

/** What was asked before the start: what is present by name, the rest by number. */
export function precautionsOf({ view }: ReportInput): Block[] {
  const { prepared, precautions } = view
  if (!prepared) return []
  const asked = [
    ...prepared.restrictions.map((one) => ({ what: one.what, clearance: one.clearance })),
    ...precautions.flatMap(({ id, ask }) => {
      const clearance = prepared.precautions[id]
      return clearance ? [{ what: ask, clearance }] : []
    }),
  ]
  if (asked.length === 0) return []
  const present = asked.filter(({ clearance }) => clearance.answer !== 'not_present')
  const rest = asked.length - present.length
  const told = present.map(({ what, clearance }) => clearanceWords(what, clearance))
  if (told.length === 0)
    return [heading(say('precautions')), paragraph(say('clearance.none_present', { count: rest }))]
  return [
    heading(say('precautions')),
    ...lines([...told, ...(rest ? [say('clearance.rest', { count: rest })] : [])]),
  ]
}

/** What every report of this test says, and how good its clock was. */
export function cautionsOf({ result }: ReportInput): Block[] {
  const clock = result.clock
    ? say('clock', { resolution: String(result.clock.resolutionMs) })
    : say('clock.none')
  return [heading(say('cautions')), ...lines([...result.cautions.map((one) => one.trim()), clock], true)]
}

/** Every source of the protocol, by the number that figures refer to it with. */
export function sourcesOf({ result }: ReportInput, names: Names): Block[] {
  if (result.sources.length === 0) return []
  const told = result.sources.map((source) =>
    say('source', {
      reference: names.reference(source.cite),
      cite: source.cite.trim().replace(/\.$/, ''),
      seen: source.seen,
    }),
  )
  return [heading(say('sources')), ...lines(told, true)]
}
