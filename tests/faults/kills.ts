/** A built host that is killed while it gives tests, and what has to hold of its records afterwards. */
import { setTimeout as wait } from 'node:timers/promises'
import { expect } from 'vitest'
import { keptProtocol } from '../../main/calls/kept.ts'
import { projector } from '../../main/calls/projector.ts'
import { canonicalText } from '../../main/records/canonical.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import { CallFailed, type Client } from '../../main/contract/client.ts'
import { openRecords, type Records, systemClock } from '../../main/records/index.ts'
import { addSomebody, giveByWire } from '../hosts/giving-by-wire.ts'
import { type Running, start } from '../hosts/program.ts'

/** What was sent to a host for one administration after another, and how much of it was acknowledged. */
export function watched(client: Client) {
  const sent: string[] = []
  const acknowledged: string[] = []
  let administration: string | null = null
  let answered = 0
  const call = async (...given: Parameters<Client['call']>) => {
    const [name, input] = given
    const body = name === 'administrations.act' && 'body' in input ? canonicalText(input.body) : null
    if (body !== null) sent.push(body)
    const answer = await client.call(...given)
    answered += 1
    if (body !== null) acknowledged.push(body)
    if (name === 'administrations.open' && 'id' in answer) {
      administration = String(answer.id)
      sent.length = 0
      acknowledged.length = 0
    }
    return answer
  }
  return {
    client: { ...client, call: call as Client['call'] },
    /** How many calls were answered in all. */
    answered: () => answered,
    sent: (): readonly string[] => sent,
    acknowledged: (): readonly string[] => acknowledged,
    administration: () => administration,
  }
}
export type Watched = ReturnType<typeof watched>

/** The records as a host that is gone has left them. */
export async function withRecords<T>(folder: string, use: (records: Records) => T | Promise<T>): Promise<T> {
  const records = openRecords({ folder, store: 'clinic', projector, clock: systemClock })
  try {
    return await use(records)
  } finally {
    records.close()
  }
}

/** What an administration's log gives by itself: its bodies in order, and the view after their replay. */
function onDisk(records: Records, id: string) {
  const events = records.administration(id)
  const opened = events.map(({ body }) => body).find((body) => body.kind === 'opened')
  if (!opened) throw new Error('Its beginning is missing.')
  const { protocol } = opened as Extract<EventBody, { kind: 'opened' }>
  const files = records.read.protocolFiles(protocol.hash)
  if (!files) throw new Error('Its protocol is missing.')
  const { runner } = keptProtocol(files)
  const { administration, refused } = runner.replay(events)
  return { events, refused, view: runner.view(administration, id) }
}

/** Holds what the killed host has acknowledged against its records. @returns where the log stands */
export function checkKept(folder: string, { sent, acknowledged, administration }: Watched) {
  return withRecords(folder, (records) => {
    expect(records.cutShort).toBe(true)
    const id = administration()
    if (id === null) return null
    const { events, refused, view } = onDisk(records, id)
    expect(refused).toEqual([])
    expect(new Set(events.map((event) => event.id)).size).toBe(events.length)
    const known = new Set(sent())
    const kept = events.map(({ body }) => canonicalText(body)).filter((body) => known.has(body))
    // All that was acknowledged, in its order and once; after it at most the one act that was on its way.
    expect(kept.slice(0, acknowledged().length)).toEqual(acknowledged())
    expect(kept.slice(acknowledged().length)).toEqual(
      kept.length > acknowledged().length ? [sent().at(-1)] : [],
    )
    const acts = acknowledged().length
    return { id, view, acts, unanswered: kept.length - acts }
  })
}

/** Opens an administration anew on a host and goes on with it. @returns the view then */
export async function resume(host: Running, id: string) {
  const [user] = (await host.client.call('clinic.state', {})).users
  await host.client.call('users.choose', { id: user?.id ?? '' })
  const { view, saved } = await host.client.call('administrations.view', { store: 'records', id })
  expect(saved).toBe(true)
  if (view.phase !== 'paused' && view.phase !== 'halted') return view
  const body = { kind: 'confirmed', what: 'resume' } as const
  return (await host.client.call('administrations.act', { store: 'records', id, body })).view
}

/** Within how many calls, and ms after the last of them, a moment is drawn: more than an administration has. */
export const MOST_CALLS = 60
export const MOST_MS = 12

interface Round {
  readonly folder: string
  /** After how many calls that were answered, and so many ms more, the host is killed. */
  readonly calls: number
  readonly ms: number
  /** What an earlier round left: it is opened first, and has to stand where its log says. */
  readonly left: NonNullable<Awaited<ReturnType<typeof checkKept>>> | null
  readonly client: string | null
}

/** Starts a host, opens what the last one left, gives tests until the moment comes, and kills it. */
export async function killedRound({ folder, calls, ms, left, client }: Round) {
  const host = await start(['--records', folder, '--no-open'])
  const seen = watched(host.client)
  let to = client
  try {
    if (left) {
      const view = await resume(host, left.id)
      const at = ({ step }: Pick<typeof view, 'step'>) => step && { name: step.name, place: step.place }
      expect(at(view)).toEqual(at(left.view))
    }
    if (!left) {
      const [user] = (await host.client.call('clinic.state', {})).users
      if (user) await host.client.call('users.choose', { id: user.id })
    }
    to ??= await addSomebody(host.client)
    const giving = giveForEver(seen.client, to)
    while (seen.answered() < calls) await wait(1)
    await wait(ms)
    await host.end('SIGKILL')
    await giving
  } finally {
    if (host.child.exitCode === null) await host.end('SIGKILL')
  }
  return { client: to, left: await checkKept(folder, seen) }
}

/** One administration after another, until the host is gone. */
async function giveForEver(client: Client, to: string): Promise<void> {
  try {
    for (;;) {
      const { until } = await giveByWire(client, to)
      await until(({ phase }) => phase === 'finished')
    }
  } catch (error) {
    if (!(error instanceof CallFailed) || error.fault.code !== 'host_gone') throw error
  }
}
