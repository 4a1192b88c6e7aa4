import * as fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import { localTime, systemClock } from '../../main/records/index.ts'
import { addClient, addUser, folder, handClock, open, profileOf } from './clinic.ts'

const inZone = (zone: string, at: number) => {
  vi.stubEnv('TZ', zone)
  try {
    return localTime(at, systemClock.offsetMinutes(at))
  } finally {
    vi.unstubAllEnvs()
  }
}

test('STD-FMT-6 the offset follows summer time and the zone, while the moment stays the same', () => {
  const before = Date.UTC(2026, 2, 29, 0, 59, 59, 999)
  expect(inZone('Europe/Paris', before)).toBe('2026-03-29T01:59:59.999+01:00')
  expect(inZone('Europe/Paris', before + 1)).toBe('2026-03-29T03:00:00.000+02:00')
  expect(inZone('America/St_Johns', before)).toBe('2026-03-28T22:29:59.999-02:30')
  expect(inZone('Asia/Kathmandu', before)).toBe('2026-03-29T06:44:59.999+05:45')
  for (const zone of ['Europe/Paris', 'America/St_Johns', 'Asia/Kathmandu', 'UTC']) {
    expect(Date.parse(inZone(zone, before))).toBe(before)
  }
})

test('a moment reads back as itself, whatever was written before it', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(
          fc.date({ noInvalidDate: true, min: new Date(0), max: new Date('2199-01-01') }),
          fc.integer({ min: -840, max: 840 }),
        ),
        {
          minLength: 1,
        },
      ),
      (moments) => {
        for (const [date, offset] of moments) {
          const text = localTime(date.getTime(), offset)
          expect(Date.parse(text)).toBe(date.getTime())
          expect(text.slice(0, 23)).toBe(
            new Date(date.getTime() + offset * 60_000).toISOString().slice(0, 23),
          )
        }
      },
    ),
  )
})

test('STD-FMT-6 an event keeps the offset it happened in, read in another zone after a journey', () => {
  const at = folder()
  const clock = handClock(Date.UTC(2026, 9, 25, 0, 30), 120)
  const records = open(at, { clock })
  const user = addUser(records, 'Ada')
  const before = addClient(records, user, profileOf('Ann'))
  clock.move(60 * 60_000)
  clock.zone(60)
  const after = addClient(records, user, profileOf('Bea'))
  records.close()
  clock.zone(-300)
  const again = open(at, { clock })
  const timeOf = (id: string) => again.stream({ kind: 'client', id })[0]?.at
  expect(timeOf(before)).toBe('2026-10-25T02:30:00.000+02:00')
  expect(timeOf(after)).toBe('2026-10-25T02:30:00.000+01:00')
  expect(again.now()).toBe('2026-10-24T20:30:00.000-05:00')
})
