/** What is asked before the first trial, as it is being answered, and what is still open in it. */
import type { Output } from '../../../main/contract/procedures.ts'
import type { Clearance, KitPiece, VisitConditions } from '../../../protocols/runner/events.ts'
import type { SidedRestriction } from '../../app/person.ts'
import { type DateDraft, draftOf } from '../../parts/read-date.ts'
import { readNumber } from '../../parts/read-number.ts'
import { say } from '../../words/index.ts'
import { wholeDate } from '../profile/draft.ts'

export type Card = Output<'protocols.read'>
export type Proposal = Output<'administrations.proposal'>
export type Prepared = NonNullable<Output<'administrations.view'>['view']['prepared']>
type Condition = Card['conditions'][number]

/** A condition has no text of its own in a protocol: its name, with a capital, is what it is called. */
export const conditionTitle = ({ title }: Condition): string => title.charAt(0).toUpperCase() + title.slice(1)

export interface ClearanceDraft {
  /** Null until somebody answers: nothing is ticked beforehand. */
  readonly answer: Clearance['answer'] | null
  readonly by: string
  readonly on: DateDraft
}

export interface VisitDraft extends Omit<VisitConditions, 'tiredness'> {
  readonly tiredness: string
}

export interface StartDraft {
  readonly precautions: Readonly<Record<string, ClearanceDraft>>
  /** In the order of the client's restrictions. */
  readonly restrictions: readonly ClearanceDraft[]
  /** `0` to `10`, `unknown`, or null until it was asked. */
  readonly pain: string | null
  readonly visit: VisitDraft
  /** Chosen piece by kit item. */
  readonly kit: Readonly<Record<string, KitPiece>>
  readonly conditions: Readonly<Record<string, string>>
}

export type Problems = Readonly<Record<string, string>>

const unanswered = (today: string): ClearanceDraft => ({ answer: null, by: '', on: draftOf(today) })

const NO_VISIT: VisitDraft = {
  splint: '',
  glasses: 'unknown',
  hearingAid: 'unknown',
  seat: '',
  helper: '',
  sinceDose: '',
  tiredness: '',
}

export interface StartFrom {
  readonly card: Card
  readonly proposal: Proposal
  readonly precautions: readonly { readonly id: string }[]
  readonly restrictions: readonly SidedRestriction[]
  readonly today: string
}

/** Kit and conditions as last time, the visit as it was asked today; precautions, restrictions and pain open. */
export function startDraft({ card, proposal, precautions, restrictions, today }: StartFrom): StartDraft {
  const { visit } = proposal
  const conditions = card.conditions.map(({ name, options, setBy, usual }) => {
    const last = options.find((option) => option.id === proposal.conditions[name])?.id
    const fixed = setBy === 'file' ? options[0]?.id : undefined
    return [name, fixed ?? last ?? (setBy === 'clinic' ? usual : null)] as const
  })
  return {
    precautions: Object.fromEntries(precautions.map(({ id }) => [id, unanswered(today)])),
    restrictions: restrictions.map(() => unanswered(today)),
    pain: null,
    visit: visit
      ? { ...visit, tiredness: visit.tiredness === null ? '' : String(visit.tiredness) }
      : NO_VISIT,
    kit: Object.fromEntries(proposal.kit.map((piece) => [piece.item, piece])),
    conditions: Object.fromEntries(conditions.filter((pair): pair is [string, string] => pair[1] !== null)),
  }
}

/** The conditions of the pieces in use go before what was said last time. */
export function conditionsOf(draft: StartDraft): Record<string, string> {
  const ofKit = Object.values(draft.kit).map((piece) => piece.conditions)
  return Object.assign({}, draft.conditions, ...ofKit)
}

/** The conditions that the pieces in use settle. */
export function settledBy(kit: StartDraft['kit']): ReadonlySet<string> {
  return new Set(Object.values(kit).flatMap((piece) => Object.keys(piece.conditions)))
}

/**
 * The conditions that the examiner has to say: all but those that the file fixes and those that the kit
 * settles, or will once each piece is chosen.
 */
export function askedConditions(card: Card, draft: StartDraft): readonly Condition[] {
  const settled = settledBy(draft.kit)
  const isChosen = card.kit.every((item) => !item.registered || draft.kit[item.id])
  return card.conditions.filter(
    ({ name, setBy }) => setBy !== 'file' && !settled.has(name) && (setBy !== 'kit' || isChosen),
  )
}

function readClearance(
  draft: ClearanceDraft,
  field: string,
  today: string,
  problems: Record<string, string>,
): Clearance {
  if (draft.answer === null) problems[field] = say('starting.clearance.open')
  if (draft.answer !== 'cleared') return { answer: draft.answer ?? 'not_known' }
  const on = wholeDate(draft.on, today)
  if (draft.by.trim() === '') problems[`${field}.by`] = say('starting.clearance.by.missing')
  if ('problem' in on) problems[`${field}.on`] = on.problem
  else if (on.date === null) problems[`${field}.on`] = say('starting.clearance.on.missing')
  return { answer: 'cleared', by: draft.by.trim(), on: ('date' in on && on.date) || today }
}

export interface StartContext {
  readonly card: Card
  readonly restrictions: readonly SidedRestriction[]
  readonly today: string
}

/** What goes into the record, or what is still open. */
export function readStart(
  draft: StartDraft,
  { card, restrictions, today }: StartContext,
): { readonly prepared: Prepared } | { readonly problems: Problems } {
  const problems: Record<string, string> = {}
  const precautions = Object.entries(draft.precautions).map(
    ([id, each]) => [id, readClearance(each, `precautions.${id}`, today, problems)] as const,
  )
  const answered = draft.restrictions.map((each, index) => ({
    what: restrictions[index]?.words ?? '',
    clearance: readClearance(each, `restrictions.${index}`, today, problems),
  }))
  for (const item of card.kit)
    if (item.registered && !draft.kit[item.id]) problems[`kit.${item.id}`] = say('starting.kit.open')
  const conditions = conditionsOf(draft)
  for (const { name } of askedConditions(card, draft))
    if (!conditions[name]) problems[`conditions.${name}`] = say('starting.condition.open')
  if (draft.pain === null) problems.pain = say('starting.pain.open')
  const tired = readNumber(draft.visit.tiredness, { least: 0, most: 10, isWhole: true })
  if ('problem' in tired) problems.tiredness = say(`parts.number.${tired.problem}`, { least: 0, most: 10 })
  if (Object.keys(problems).length > 0) return { problems }
  return {
    prepared: {
      precautions: Object.fromEntries(precautions),
      restrictions: answered,
      painNow: draft.pain === 'unknown' ? null : Number(draft.pain),
      visit: { ...draft.visit, tiredness: 'number' in tired ? tired.number : null },
      kit: Object.values(draft.kit),
      conditions,
    },
  }
}

const isBarring = (each: ClearanceDraft | undefined) => each?.answer === 'not_given'

/** What somebody answered that the test is not to be given for, in words; empty: it may be given. */
export function barredBy(
  draft: StartDraft,
  precautions: readonly { readonly id: string; readonly ask: string }[],
  restrictions: readonly SidedRestriction[],
): readonly string[] {
  return [
    ...precautions.filter(({ id }) => isBarring(draft.precautions[id])).map(({ ask }) => ask),
    ...restrictions.filter((_, index) => isBarring(draft.restrictions[index])).map(({ words }) => words),
  ]
}
