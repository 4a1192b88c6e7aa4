/**
 * The read models of administrations. What only the protocol can say (phase, scores) comes from a projector
 * that the caller gives; the rest is read off the events here. An administration's rows are a pure function of
 * its own events and the protocol files it was given by.
 */
import type { EventBody, Recorded } from '../../protocols/runner/events.ts'
import { canonicalText } from './canonical.ts'
import type { Entry } from './entry.ts'
import type { Change } from './projection-kind.ts'

/** A score as it is kept for lists and histories. */
export interface ProjectedScore {
  readonly score: string
  readonly place: Readonly<Record<string, string>>
  readonly title: string
  readonly value: number | null
  /** True where the value is a bound: "at least". */
  readonly over: boolean
  readonly unit: string
  readonly decimals: number
  readonly better: 'higher' | 'lower' | 'none'
  /** Code of why there is no value. */
  readonly missing: string | null
}

/** What a projector says of an administration after the events so far. */
export interface Projected {
  /** The protocol's title in the words it is given by. */
  readonly title: string
  readonly phase: string
  /** Name of the examiner and civil date as they stand: what put them right may itself have been undone. */
  readonly examiner: string
  readonly on: string
  readonly deviations: number
  /** The conditions and kit it was given with, in any text form: two that differ aren't joined in a chart. */
  readonly basis: string
  /** Empty until there is something to score. */
  readonly scores: readonly ProjectedScore[]
}

/**
 * The domain's part of the read models. Pure: the same files and events always give the same rows. `take` is
 * called once for each event as it is appended and must not change the state it was given, for an append that
 * the disk refuses is forgotten. `touches` says of a kind of event whether `project` may tell anything else after
 * it: those that it doesn't touch are only kept, and taken when one comes that it does, so that a trial's many
 * events cost no more than their rows.
 */
export interface Projector<S> {
  /** @param files the protocol that `opened` names by its hash; null where it is not kept */
  begin(files: ReadonlyMap<string, string> | null): S
  touches(kind: string): boolean
  take(state: S, event: Recorded): S
  project(state: S): Projected
}

/** An administration as far as its events have been taken. */
export interface Folded {
  /** The projector's; a thrown error where it could not take an event: the rest then stays as it was. */
  readonly state: { readonly of: unknown } | { readonly broken: unknown }
  readonly opened: Extract<EventBody, { kind: 'opened' }>
  readonly startedAt: string
  readonly finishedAt: string | null
  /** Everybody who was ever said to have given it, the latest last. */
  readonly examiners: readonly { readonly id: string; readonly name: string }[]
  /** Everybody it was ever assigned to; the last is whose it is. */
  readonly clients: readonly string[]
  readonly note: string | null
  readonly withdrawn: boolean
}

type Of<K extends string> = Extract<EventBody, { kind: K }>

/** What the events that put an administration right change of it. */
const FACTS: { readonly [K in string]?: (folded: Folded, body: never, at: string) => Partial<Folded> } = {
  assigned: (folded, body: Of<'assigned'>) => ({
    clients: body.client
      ? [...folded.clients.filter((client) => client !== body.client), body.client]
      : folded.clients,
  }),
  reattributed: (folded, body: Of<'reattributed'>) => ({
    examiners: body.examiner ? [...folded.examiners, body.examiner] : folded.examiners,
  }),
  noted: (_, body: Of<'noted'>) => ({ note: body.text }),
  withdrawn: () => ({ withdrawn: true }),
  finished: (_folded, _body, at) => ({ finishedAt: at }),
}

/** Whether a kind of event changes what is read off the events here. */
export const changesFacts = (kind: string): boolean => Object.hasOwn(FACTS, kind)

const isOpened = (body: EventBody): body is Of<'opened'> => body.kind === 'opened'

const tried = (take: () => unknown): Folded['state'] => {
  try {
    return { of: take() }
  } catch (error) {
    return { broken: error }
  }
}

/**
 * @returns what stood before with one event more
 * @throws TypeError where the first event isn't `opened` or a later one is
 */
export function fold<S>(
  projector: Projector<S>,
  filesOf: (hash: string) => ReadonlyMap<string, string> | null,
  before: Folded | null,
  entry: Entry,
): Folded {
  const body = entry.body as EventBody
  const event: Recorded = { id: entry.id, at: entry.at, user: entry.user, body }
  if (isOpened(body) === (before !== null)) {
    throw new TypeError(`An administration begins with 'opened', and only once (here: '${body.kind}').`)
  }
  if (before) {
    const facts = FACTS[body.kind]?.(before, body as never, entry.at) ?? {}
    const { state } = before
    if ('broken' in state) return { ...before, ...facts }
    return { ...before, ...facts, state: tried(() => projector.take(state.of as S, event)) }
  }
  const opened = body as Of<'opened'>
  return {
    state: tried(() => projector.take(projector.begin(filesOf(opened.protocol.hash)), event)),
    opened,
    startedAt: entry.at,
    finishedAt: null,
    examiners: [opened.examiner],
    clients: [],
    note: null,
    withdrawn: false,
  }
}

/** What an administration shows that its projector can't read, such as one given by a newer program. */
const unreadable = ({ opened }: Folded): Projected => ({
  title: '',
  phase: 'unreadable',
  examiner: opened.examiner.name,
  on: opened.on,
  deviations: 0,
  basis: '',
  scores: [],
})

export const ADMINISTRATION_TABLES = ['administration', 'administration_client', 'score'] as const

/** The rows of one administration, in place of those it had. */
export function rowsOf<S>(projector: Projector<S>, id: string, folded: Folded): readonly Change[] {
  const projected = 'broken' in folded.state ? unreadable(folded) : projector.project(folded.state.of as S)
  const { opened } = folded
  const client = folded.clients.at(-1) ?? null
  const examiner = folded.examiners.findLast((one) => one.name === projected.examiner) ?? opened.examiner
  return [
    {
      put: 'administration',
      row: {
        id,
        protocol: opened.protocol.id,
        version: opened.protocol.version,
        title: projected.title,
        hash: opened.protocol.hash,
        source: opened.protocol.from,
        wording: opened.protocol.wording,
        rehearsal: opened.rehearsal ? 1 : 0,
        client,
        visit: opened.visit,
        examiner: examiner.id,
        examiner_name: examiner.name,
        given_on: projected.on,
        started_at: folded.startedAt,
        finished_at: folded.finishedAt,
        phase: projected.phase,
        withdrawn: folded.withdrawn ? 1 : 0,
        note: folded.note,
        deviations: projected.deviations,
        basis: projected.basis,
      },
    },
    ...folded.clients.map((one) => ({
      put: 'administration_client',
      row: { administration: id, client: one, current: one === client ? 1 : 0 },
    })),
    { drop: 'score', where: { administration: id } },
    ...projected.scores.map((score) => ({
      put: 'score',
      row: {
        administration: id,
        score: score.score,
        place: canonicalText(score.place),
        title: score.title,
        value: score.value,
        over: score.over ? 1 : 0,
        unit: score.unit,
        decimals: score.decimals,
        better: score.better,
        missing: score.missing,
      },
    })),
  ]
}
