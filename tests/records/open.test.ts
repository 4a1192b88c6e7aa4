import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { addClient, addUser, folder, furnished, kindsOf, open, profileOf, quietly } from './clinic.ts'

test('what was appended is there after closing and opening again', () => {
  const at = folder()
  const first = open(at)
  const { user, client, administration } = furnished(first)
  const events = first.administration(administration)
  const device = first.device
  first.close()
  const again = open(at)
  expect(again.device).toBe(device)
  expect(again.administration(administration)).toEqual(events)
  expect(kindsOf(events)).toEqual(['opened', 'assigned', 'tapped.tap', 'tapped.tap', 'finished'])
  expect(again.read.user(user)?.name).toBe('Ada')
  expect(again.read.client(client)?.profile.number).toBe('K-104')
  expect(again.read.administration(administration)).toMatchObject({
    protocol: 'ring_board',
    phase: 'finished',
    client,
    clientName: 'Łukasz Ångström',
    examiner: { id: user, name: 'Ada' },
    on: '2026-03-02',
    note: null,
    enteredInError: false,
  })
  expect(again.read.scoresOf(administration)).toMatchObject([
    { score: 'total', value: 2, place: { hand: 'right' } },
  ])
})

test('nothing a client is known by stands readable on disk', () => {
  const at = folder()
  const records = open(at)
  const user = addUser(records, 'Ada Marker-Examiner')
  addClient(records, user, profileOf('Zebedee Marker-Client', { number: 'MARKER-99' }))
  const check = () => {
    for (const name of readdirSync(at)) {
      const bytes = readFileSync(join(at, name)).toString('latin1')
      expect(bytes.toLowerCase()).not.toContain('marker')
    }
  }
  const whileOpen = readdirSync(at)
  expect(whileOpen).toContain('records.db-wal')
  records.close()
  check()
})

test('a fresh clinic verifies, and so does one in use', async () => {
  const records = open(folder())
  expect(await records.verify(quietly)).toMatchObject({ events: 2, devices: 1, problems: [] })
  furnished(records)
  expect(await records.verify(quietly)).toMatchObject({ events: 11, devices: 1, problems: [] })
})
