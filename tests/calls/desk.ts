/** A desk for tests: a real clinic in a folder of its own, and a screen's client that calls it. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { type Clinic, openClinic } from '../../main/calls/clinic.ts'
import { handlersOf } from '../../main/calls/handlers.ts'
import { CallFailed, type Client, createClient } from '../../main/contract/client.ts'
import { createDispatcher } from '../../main/contract/dispatch.ts'
import type { WallClock } from '../../main/records/index.ts'
import type { EventBody, VisitConditions } from '../../protocols/runner/events.ts'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { profileOf } from './profile.ts'

export const LIBRARY = resolve('protocols/library')
export const PEGS = { from: 'library', key: 'nine_hole_peg' } as const
export const GRIP = { from: 'library', key: 'grip_strength' } as const

/** A wall clock that a test moves. */
export function testClock(at = '2026-11-25T09:00:00Z') {
  const clock = { moment: Date.parse(at), now: () => clock.moment, offsetMinutes: () => 60 }
  return clock
}

export interface Desk {
  readonly folder: string
  readonly clinic: Clinic
  readonly client: Client
  readonly defects: unknown[]
  readonly user: string
}

interface Given {
  readonly folder?: string
  readonly clock?: WallClock
  readonly demo?: boolean
}

export const newFolder = (): string => join(mkdtempSync(join(tmpdir(), 'evenhand-desk-')), 'clinic')

/** Opens a clinic and seats an examiner. */
export async function openDesk({
  folder = newFolder(),
  clock = testClock(),
  demo = false,
}: Given = {}): Promise<Desk> {
  const clinic = openClinic({ folder, library: LIBRARY, demo, clock })
  const defects: unknown[] = []
  const { dispatch } = createDispatcher({
    handlers: handlersOf(clinic),
    push: clinic.push,
    onDefect: (name, error) => defects.push(name, error),
  })
  const session = { id: 'desk', user: null }
  const client = createClient({
    invoke: async (name, input, call) =>
      structuredClone(await dispatch(session, name, structuredClone(input), call)),
    listen: clinic.listen,
  })
  const [known] = (await client.call('clinic.state', {})).users
  const user = known ?? (await client.call('users.add', { name: 'Ada Venn' }))
  await client.call('users.choose', { id: user.id })
  return { folder, clinic, client, defects, user: user.id }
}

export const faultOf = (promise: Promise<unknown>) =>
  promise.then(
    () => null,
    (error: unknown) => {
      if (error instanceof CallFailed) return error.fault
      throw error
    },
  )

const unaffected = {
  status: 'unaffected',
  condition: '',
  since: '',
  absentPart: '',
  restrictions: [],
} as const

export async function addClient({ client }: Desk, name: string) {
  const facts = {
    birth: { known: 'date', date: '1985-06-15' },
    sex: 'F',
    dominantBefore: 'right',
    usedNow: 'right',
    arms: { right: unaffected, left: unaffected },
  } as const
  const profile = profileOf({ name, facts: { ...facts, arms: { ...facts.arms } } as never })
  return (await client.call('clients.add', { profile })).id
}

type Store = 'records' | 'rehearsal'
type Key = { readonly from: 'library' | 'clinic'; readonly key: string }

/** Opens a test, answers what is asked before it and confirms: the first step is at hand. */
export async function begin(
  desk: Desk,
  protocol: Key,
  client: string | null,
  today: Partial<VisitConditions> = {},
): Promise<AdministrationView> {
  const store: Store = client === null ? 'rehearsal' : 'records'
  const card = await desk.client.call('protocols.read', protocol)
  const opened = await desk.client.call('administrations.open', { store, protocol, client, wording: null })
  const chosen = card.conditions.flatMap(({ name, setBy, usual, options }) => {
    const option = usual ?? options[0]?.id
    return setBy === 'file' || option === undefined ? [] : [[name, option] as const]
  })
  await act(desk, opened, {
    kind: 'prepared',
    precautions: Object.fromEntries(card.precautions.map(({ id }) => [id, { answer: 'not_present' }])),
    restrictions: [],
    painNow: 0,
    visit: {
      splint: '',
      glasses: 'none',
      hearingAid: 'none',
      seat: '',
      helper: '',
      sinceDose: '',
      tiredness: 2,
      ...today,
    },
    kit: [],
    conditions: Object.fromEntries(chosen),
  })
  await act(desk, opened, { kind: 'clock', clock: 'test', resolutionMs: 0.005, isolated: true })
  return act(desk, opened, { kind: 'confirmed', what: 'start' })
}

/** An act that must be taken. */
export async function act(desk: Desk, { id, rehearsal }: AdministrationView, body: EventBody) {
  const store: Store = rehearsal ? 'rehearsal' : 'records'
  const acted = await desk.client.call('administrations.act', { store, id, body })
  if (!acted.taken) throw new Error(`${body.kind} was refused: ${acted.refusal.refused}`)
  return acted.view
}

let clockAt = 0

/** What a made-up examiner does next, sent through the contract as a screen sends it. */
export async function goOn(desk: Desk, view: AdministrationView): Promise<AdministrationView> {
  const [unexplained] = view.unexplained
  if (unexplained !== undefined)
    return act(desk, view, { kind: 'explained', trial: unexplained, happening: 'interruption', remark: '' })
  if (view.step === null) return act(desk, view, { kind: 'finished' })
  const { kept, administration } = desk.clinic.live.read(view.rehearsal ? 'rehearsal' : 'records', view.id)
  const next = kept.runner.rehearse(administration, () => 0.5)
  if (!next) throw new Error(`Nothing to go on with in ${view.step.name}`)
  clockAt += next.after + 10
  const stamp = { at: clockAt, clock: 'test', input: 'key', late: 0.2 } as const
  return act(desk, view, {
    ...next.data(stamp),
    kind: `${view.step.kind}.${next.event}`,
    step: view.step.name,
    place: view.step.place,
  })
}

/** Goes on until something holds of the view. */
export async function until(
  desk: Desk,
  from: AdministrationView,
  holds: (view: AdministrationView) => boolean,
) {
  let view = from
  for (let steps = 0; !holds(view); steps += 1) {
    if (steps > 1000) throw new Error('It never comes to that.')
    view = await goOn(desk, view)
  }
  return view
}

export const isFinished = ({ phase }: AdministrationView): boolean => phase === 'finished'
export const isRunning = ({ trials }: AdministrationView): boolean =>
  trials.some(({ status, practice }) => status === 'running' && !practice)

export async function give(desk: Desk, protocol: Key, client: string | null) {
  return until(desk, await begin(desk, protocol, client), isFinished)
}
