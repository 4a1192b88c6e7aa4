/** Gives a test to a program in another process: what to do next is worked out by a runner of the test's own. */
import { resolve } from 'node:path'
import { readFolder } from '../../main/protocol-folders.ts'
import type { Client } from '../../main/contract/client.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { profileOf } from '../calls/profile.ts'

/** A test as a host names it, and where its folder lies for the runner of the test's own. */
interface Test {
  readonly from: 'library' | 'clinic'
  readonly key: string
  readonly folder: string
}
const PEGS: Test = {
  from: 'library',
  key: 'nine_hole_peg',
  folder: resolve('protocols/library/nine_hole_peg'),
}
const unaffected = {
  status: 'unaffected',
  condition: '',
  since: '',
  absentPart: '',
  restrictions: [],
} as const

export async function addSomebody(client: Client): Promise<string> {
  const user = await client.call('users.add', { name: 'Ada Venn' })
  await client.call('users.choose', { id: user.id })
  const known = { sex: 'F', dominantBefore: 'right', usedNow: 'right' } as const
  const arms = { right: { ...unaffected, restrictions: [] }, left: { ...unaffected, restrictions: [] } }
  const profile = profileOf({ name: 'Rosa Marsh', facts: { ...known, arms } })
  return (await client.call('clients.add', { profile })).id
}

/**
 * Opens a test, the nine-hole pegs where none is named, and gives it until something holds of the view.
 * @returns the view then, and what goes on from there
 */
export async function giveByWire(client: Client, to: string, { folder, from, key } = PEGS) {
  const { protocol } = readProtocol(readFolder(folder, key).folder)
  if (!protocol) throw new Error('The library has a fault.')
  const runner = runnerFor(protocol)
  let local = runner.begin()
  let at = 0
  const opened = await client.call('administrations.open', {
    store: 'records',
    protocol: { from, key },
    client: to,
    wording: null,
  })
  const { id } = opened

  function follow(body: EventBody) {
    const next = runner.take(local, { id: crypto.randomUUID(), at: new Date().toISOString(), user: '', body })
    if ('refused' in next) throw new Error(`${body.kind}: ${next.refused}`)
    local = next
    const owed = runner.owed(local, { random: () => 0, earlier: () => [] })
    if (owed) follow(owed)
  }
  async function act(body: EventBody): Promise<AdministrationView> {
    const acted = await client.call('administrations.act', { store: 'records', id, body })
    if (!acted.taken) throw new Error(`${body.kind}: ${acted.refusal.refused}`)
    follow(body)
    return acted.view
  }
  follow({
    kind: 'opened',
    protocol: { ...opened.protocol, hash: '0'.repeat(64), language: 'en' },
    program: '',
    rehearsal: false,
    visit: null,
    on: opened.on,
    examiner: { id, name: '' },
  } as EventBody)
  follow({ kind: 'assigned', client: to, facts: opened.facts, reason: null } as EventBody)
  await act({
    kind: 'prepared',
    precautions: Object.fromEntries(opened.precautions.map((one) => [one.id, { answer: 'not_present' }])),
    restrictions: [],
    painNow: null,
    visit: {
      splint: '',
      glasses: 'unknown',
      hearingAid: 'unknown',
      seat: '',
      helper: '',
      sinceDose: '',
      tiredness: null,
    },
    kit: [],
    conditions: Object.fromEntries(
      protocol.conditions
        .filter(({ setBy }) => setBy !== 'file')
        .map(({ name, usual, options }) => [name, usual ?? options[0]?.id ?? '']),
    ),
  })
  await act({ kind: 'clock', clock: 'wire', resolutionMs: 0.005, isolated: true })
  let view = await act({ kind: 'confirmed', what: 'start' })
  const until = async (holds: (view: AdministrationView) => boolean) => {
    while (!holds(view)) {
      const next = view.step && runner.rehearse(local, () => 0.5)
      if (!next || !view.step) {
        view = await act({ kind: 'finished' })
        continue
      }
      at += next.after + 10
      const { kind, name, place } = view.step
      const stamp = { at, clock: 'wire', input: 'key', late: 0 } as const
      view = await act({ ...next.data(stamp), kind: `${kind}.${next.event}`, step: name, place })
    }
    return view
  }
  return { id, until }
}

export const isInFlight = ({ trials }: AdministrationView): boolean =>
  trials.some(({ status, practice }) => status === 'running' && !practice)
