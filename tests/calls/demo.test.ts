import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { openClinic } from '../../main/calls/clinic.ts'
import { CLIENTS } from '../../main/calls/demo/people.ts'
import { Refused } from '../../main/contract/procedure.ts'
import { type Desk, LIBRARY, newFolder, openDesk, testClock } from './desk.ts'

const codeOf = (open: () => unknown) => {
  try {
    open()
  } catch (error) {
    if (error instanceof Refused) return error.fault.code
    throw error
  }
  return null
}
const find = async ({ client }: Desk, text: string) => (await client.call('clients.search', { text })).found

/** One demo clinic as it is first made; tests open copies of it. */
let made = ''
beforeAll(async () => {
  const desk = await openDesk({ demo: true })
  desk.clinic.close()
  made = desk.folder
}, 60_000)
const openCopy = () => {
  const folder = newFolder()
  cpSync(made, folder, { recursive: true })
  return openDesk({ folder, demo: true })
}

const scoresOn = async (at: string) => {
  const desk = await openDesk({ demo: true, clock: testClock(at) })
  const found = await find(desk, 'Ruge')
  const history = await desk.client.call('history.read', {
    client: found[0]?.id ?? '',
    protocol: 'box_and_block',
  })
  desk.clinic.close()
  return history.flatMap(({ points }) => points.map(({ value }) => value))
}

const open = (folder: string, asDemo: boolean) =>
  codeOf(() => openClinic({ folder, library: LIBRARY, demo: asDemo, clock: testClock() }))

describe('the demo clinic', () => {
  test('has invented clients with past visits, reports and a history, all marked as demo', async () => {
    const desk = await openCopy()
    const state = await desk.client.call('clinic.state', {})
    expect([state.demo, state.notice.includes('demo')]).toEqual([true, true])
    expect(state.users.every(({ name }) => name.includes('demo'))).toBe(true)
    for (const { profile, visits } of CLIENTS) {
      const [found] = await find(desk, profile.name || profile.number)
      const { administrations } = await desk.client.call('clients.read', { id: found?.id ?? '' })
      expect(administrations).toHaveLength(visits.flatMap(({ tests }) => tests).length)
      for (const { phase, on } of administrations) {
        expect(phase).toBe('finished')
        expect(on < state.today).toBe(true)
      }
    }
    const [osterkamp] = await find(desk, 'Osterkamp')
    const history = await desk.client.call('history.read', {
      client: osterkamp?.id ?? '',
      protocol: 'nine_hole_peg',
    })
    const time = history.find(({ score }) => score === 'time')
    expect(time?.points.filter(({ place }) => place.hand === 'right')).toHaveLength(3)
    expect(desk.defects).toEqual([])
    desk.clinic.close()
  })

  test('looks like a recovery: the affected hand gains from visit to visit, the other one stays as it was', async () => {
    const desk = await openCopy()
    for (const [name, protocol, score, gains] of [
      ['Osterkamp', 'nine_hole_peg', 'time', -1],
      ['Ruge', 'grip_strength', 'mean_of_3', 1],
      ['Ruge', 'box_and_block', 'blocks', 1],
    ] as const) {
      const [found] = await find(desk, name)
      const history = await desk.client.call('history.read', { client: found?.id ?? '', protocol })
      const valuesOf = (hand: string) =>
        (history.find((one) => one.score === score)?.points ?? [])
          .filter(({ place }) => place.hand === hand)
          .map(({ value }) => value ?? Number.NaN)
      const affected = valuesOf('right')
      const other = valuesOf('left')
      expect(affected).toHaveLength(3)
      expect(affected.toSorted((a, b) => gains * (a - b))).toEqual(affected)
      expect(Math.max(...other) / Math.min(...other)).toBeLessThan(1.15)
      expect(gains * ((affected.at(-1) ?? 0) - (affected[0] ?? 0))).toBeGreaterThan(0.15 * (affected[0] ?? 0))
    }
    desk.clinic.close()
  })

  test('has a deviation, a void trial with its reason, and the note of each visit that is not due', async () => {
    const desk = await openCopy()
    const results = []
    for (const { profile } of CLIENTS) {
      const [found] = await find(desk, profile.name || profile.number)
      const { administrations } = await desk.client.call('clients.read', { id: found?.id ?? '' })
      for (const { id } of administrations)
        results.push(await desk.client.call('administrations.result', { store: 'records', id }))
    }
    expect(results.every(({ shortText }) => shortText.split('\n').length > 1)).toBe(true)
    expect(results.flatMap(({ result }) => result.deviations)).toHaveLength(2)
    const voids = results.flatMap(({ result }) => result.trials.filter(({ status }) => status === 'void'))
    expect(voids.length).toBeGreaterThan(0)
    expect(voids.every((trial) => trial.void?.happening)).toBe(true)
    desk.clinic.close()
  })

  test('something waits there for the examiner', async () => {
    const desk = await openCopy()
    const { users } = await desk.client.call('clinic.state', {})
    const waiting = []
    for (const { id } of users) {
      await desk.client.call('users.choose', { id })
      waiting.push(...(await desk.client.call('desk.waiting', {})))
    }
    expect(waiting.length).toBeGreaterThan(0)
    desk.clinic.close()
  })

  test('says the same whenever it is made: only the days move', async () => {
    const scores = await scoresOn('2026-11-25T09:00:00Z')
    expect(scores.length).toBeGreaterThan(2)
    expect(await scoresOn('2027-03-01T15:00:00Z')).toEqual(scores)
  })

  test('verifies like any other records', async () => {
    const desk = await openCopy()
    const report = await desk.clinic.stores.records.verify({
      progress: () => {},
      signal: new AbortController().signal,
    })
    expect(report.problems).toEqual([])
    desk.clinic.close()
  })

  test('a folder of one sort is never opened as the other', async () => {
    const demo = await openCopy()
    demo.clinic.close()
    const real = await openDesk()
    real.clinic.close()
    expect(open(demo.folder, false)).toBe('records.other-store')
    expect(open(real.folder, true)).toBe('records.other-store')
  })

  test('one whose making was cut short is made anew', async () => {
    const folder = newFolder()
    mkdirSync(join(`${folder}.unfinished`, 'junk'), { recursive: true })
    const desk = await openDesk({ folder, demo: true })
    expect((await find(desk, 'Osterkamp')).length).toBe(1)
    expect(existsSync(`${folder}.unfinished`)).toBe(false)
    expect(readdirSync(dirname(folder))).toEqual(['clinic'])
    desk.clinic.close()
  })

  test('its records are encrypted like real ones', async () => {
    const desk = await openCopy()
    desk.clinic.close()
    expect(readFileSync(join(desk.folder, 'records.db')).includes('Osterkamp')).toBe(false)
  })
})
