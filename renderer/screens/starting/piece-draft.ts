/** A piece of kit as it is being registered. */
import type { KitPiece } from '../../../protocols/runner/events.ts'
import { type DateDraft, NO_DATE } from '../../parts/read-date.ts'
import { say } from '../../words/index.ts'
import { wholeDate } from '../profile/draft.ts'
import type { Card } from './draft.ts'

export interface PieceDraft {
  readonly ownName: string
  readonly unit: string
  readonly lastCheck: DateDraft
  readonly nextCheck: DateDraft
  readonly conditions: Readonly<Record<string, string>>
}

export const NO_PIECE: PieceDraft = {
  ownName: '',
  unit: '',
  lastCheck: NO_DATE,
  nextCheck: NO_DATE,
  conditions: {},
}

/** The conditions that a piece of kit can settle, and no other piece in use has settled yet. */
export const buildsOf = (card: Card, settled: ReadonlySet<string>) =>
  card.conditions.filter(({ name, setBy }) => setBy === 'kit' && !settled.has(name))

export interface PieceContext {
  readonly builds: readonly { readonly name: string }[]
  readonly item: string
  readonly today: string
}

/** The piece that the draft means, or what is wrong with it by field. */
export function readPiece(
  draft: PieceDraft,
  { builds, item, today }: PieceContext,
): { readonly piece: Omit<KitPiece, 'id'> } | { readonly problems: Readonly<Record<string, string>> } {
  const problems: Record<string, string> = {}
  const last = wholeDate(draft.lastCheck, today)
  const next = wholeDate(draft.nextCheck, null)
  if (draft.ownName.trim() === '') problems.ownName = say('starting.kit.name.missing')
  if ('problem' in last) problems.lastCheck = last.problem
  if ('problem' in next) problems.nextCheck = next.problem
  for (const { name } of builds)
    if (!draft.conditions[name]) problems[name] = say('starting.kit.build.missing')
  if (Object.keys(problems).length > 0) return { problems }
  return {
    piece: {
      item,
      ownName: draft.ownName.trim(),
      conditions: { ...draft.conditions },
      unit: draft.unit.trim(),
      lastCheck: 'date' in last ? last.date : null,
      nextCheck: 'date' in next ? next.date : null,
    },
  }
}
