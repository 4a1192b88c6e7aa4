import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, expect, test } from 'vitest'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { act, addClient, begin, type Desk, openDesk, until } from './desk.ts'

const OWN = { from: 'clinic', key: 'our_pegs' } as const

let desk: Desk
beforeEach(async () => {
  desk = await openDesk()
  return () => desk.clinic.close()
})

/** The clinic's own peg test, its hands in another order. */
function inOrder(order: string): void {
  const own = join(desk.clinic.ownProtocols, OWN.key)
  cpSync('protocols/library/nine_hole_peg', own, { recursive: true })
  const path = join(own, 'protocol.yaml')
  const text = readFileSync(path, 'utf8').replace('id: nine_hole_peg', 'id: our_pegs')
  writeFileSync(path, text.replace(/^(\s+)order: .*first.*$/m, `$1order: ${order}`))
}

const hasOrder = ({ firstHand, choosing }: AdministrationView) => firstHand !== null || choosing !== null

async function firstHandOf(name: string) {
  const view = await until(desk, await begin(desk, OWN, await addClient(desk, name)), hasOrder)
  return { id: view.id, first: view.firstHand?.hand, rule: view.firstHand?.rule }
}

test('a balanced order is in turn over the clinic’s clients, whoever gives the test', async () => {
  inOrder('balanced')
  const given = []
  for (const name of ['Ada Marsh', 'Berit Holm', 'Cato Lind', 'Dag Moe', 'Eli Rud', 'Fia Sand'])
    given.push(await firstHandOf(name))
  expect(given.every(({ rule }) => rule === 'balanced')).toBe(true)
  for (const at of [0, 2, 4])
    expect(new Set([given[at]?.first, given[at + 1]?.first])).toEqual(new Set(['right', 'left']))
})

test('one that was withdrawn as the wrong test does not count', async () => {
  inOrder('balanced')
  const { id, first } = await firstHandOf('Ada Marsh')
  const { view } = await desk.client.call('administrations.view', { store: 'records', id })
  await act(desk, view, { kind: 'withdrawn', reason: 'Wrong test.' })
  expect(desk.clinic.stores.records.read.ordersOf('our_pegs', 'hand')).toEqual([])
  const second = await firstHandOf('Berit Holm')
  const third = await firstHandOf('Cato Lind')
  expect(new Set([second.first, third.first])).toEqual(new Set(['right', 'left']))
  expect(first).toBeDefined()
})

test('an order that the file leaves to the examiner is chosen, and recorded as chosen', async () => {
  inOrder('chosen')
  const client = await addClient(desk, 'Ada Marsh')
  const view = await until(desk, await begin(desk, OWN, client), hasOrder)
  expect(view).toMatchObject({ step: null, choosing: { list: 'hands', items: ['right', 'left'] } })
  const chosen = await act(desk, view, {
    kind: 'ordered',
    section: view.choosing?.section ?? '',
    place: view.choosing?.place ?? {},
    items: ['left', 'right'],
    rule: 'chosen',
  })
  expect(chosen.firstHand).toEqual({ hand: 'left', rule: 'chosen' })
})
