import { beforeEach, describe, expect, test } from 'vitest'
import { openClinic } from '../../main/calls/clinic.ts'
import { PROGRAM_STAMP } from '../../main/program.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import {
  act,
  addClient,
  begin,
  type Desk,
  faultOf,
  give,
  goOn,
  isRunning,
  LIBRARY,
  openDesk,
  PEGS,
  testClock,
  until,
} from './desk.ts'

let desk: Desk
let ada = ''
beforeEach(async () => {
  desk = await openDesk()
  ada = await addClient(desk, 'Ada Marsh')
  return () => desk.clinic.close()
})

const records = { store: 'records' } as const

describe('giving a test through the contract', () => {
  test('from choosing to the result, the report and the note', async () => {
    const { id } = await give(desk, PEGS, ada)
    const { result, shortText, noteTaken } = await desk.client.call('administrations.result', {
      ...records,
      id,
    })
    expect(result.complete).toBe(true)
    expect(
      result.scores.find(({ score, place }) => score === 'time' && place.hand === 'right')?.value,
    ).toBeGreaterThan(0)
    expect(noteTaken).toBe(false)
    expect(shortText.split('\n').length).toBeLessThanOrEqual(6)
    const doing: string[] = []
    const report = await desk.client.call(
      'administrations.report',
      { ...records, id },
      { onProgress: (_, what) => doing.push(what) },
    )
    expect(Buffer.from(report.pdfBase64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
    expect(doing).toEqual(['gathering', 'typesetting'])
    await desk.client.call('administrations.note', { ...records, id, text: 'As agreed.' })
    const after = await desk.client.call('administrations.result', { ...records, id })
    expect([after.noteTaken, after.shortText]).toEqual([true, 'As agreed.'])
    expect(desk.defects).toEqual([])
  })

  test('an act that may not happen now changes nothing and writes nothing', async () => {
    const view = await begin(desk, PEGS, ada)
    const before = desk.clinic.stores.records.administration(view.id).length
    const acted = await desk.client.call('administrations.act', {
      ...records,
      id: view.id,
      body: { kind: 'finished' },
    })
    expect(acted).toMatchObject({ taken: false, saved: true, view })
    expect(desk.clinic.stores.records.administration(view.id)).toHaveLength(before)
  })

  test('what only the host may write is refused', async () => {
    const view = await begin(desk, PEGS, ada)
    const other = await addClient(desk, 'Berit Holm')
    const assigned = { kind: 'assigned', client: other, facts: view.facts, reason: null } as never
    const fault = await faultOf(
      desk.client.call('administrations.act', { ...records, id: view.id, body: assigned }),
    )
    expect(fault?.code).toBe('host_only_event')
  })

  test('an examiner put right is somebody of the clinic, by the name on record, and on a day that has come', async () => {
    const { id, examiner } = await give(desk, PEGS, ada)
    const odile = await desk.client.call('users.add', { name: 'Odile Brack' })
    const put = (change: object) =>
      desk.client.call('administrations.act', {
        ...records,
        id,
        body: { kind: 'reattributed', examiner: null, on: null, reason: 'Mixed up.', ...change },
      })
    const stranger = { id: crypto.randomUUID(), name: 'Nobody' }
    expect((await faultOf(put({ examiner: stranger })))?.code).toBe('no_such_user')
    expect((await faultOf(put({ on: '2026-11-26' })))?.code).toBe('date_in_future')
    expect((await faultOf(put({ on: '2026-02-30' })))?.code).toBe('date_impossible')
    const { view } = await put({ examiner: { id: odile.id, name: 'Another Name' }, on: '2026-11-24' })
    expect([examiner, view.examiner, view.on]).toEqual(['Ada Venn', 'Odile Brack', '2026-11-24'])
    const { administrations } = await desk.client.call('clients.read', { id: ada })
    expect(administrations).toMatchObject([{ examiner: 'Odile Brack', on: '2026-11-24' }])
  })

  test('STD-ADM-4 the record holds protocol hash, version, language, program version and clock resolution', async () => {
    const { id } = await give(desk, PEGS, ada)
    const { hash } = desk.clinic.shelf.sound(PEGS)
    desk.clinic.close()
    const fresh = openClinic({ folder: desk.folder, library: LIBRARY, demo: false, clock: testClock() })
    const events = fresh.stores.records.administration(id).map(({ body }) => body)
    expect(events[0]).toMatchObject({
      kind: 'opened',
      program: PROGRAM_STAMP,
      protocol: { id: 'nine_hole_peg', version: '1.0.1', hash, language: 'en' },
    })
    expect(events.find(({ kind }) => kind === 'clock')).toMatchObject({ resolutionMs: 0.005, isolated: true })
    expect(fresh.stores.records.read.protocolFiles(hash)?.has('protocol.yaml')).toBe(true)
    fresh.close()
    desk = await openDesk()
  })

  test('the last administration’s conditions and the visit’s answers are proposed, none of an earlier visit', async () => {
    const none = await desk.client.call('administrations.proposal', { protocol: PEGS, client: ada })
    expect(none).toEqual({ conditions: {}, kit: [], visit: null, lastGivenOn: null })
    const visit = await desk.client.call('visits.open', { client: ada })
    await give(desk, PEGS, ada)
    const same = await desk.client.call('administrations.proposal', { protocol: PEGS, client: ada })
    expect(same).toMatchObject({ visit: { tiredness: 2 }, lastGivenOn: '2026-11-25' })
    expect(Object.keys(same.conditions)).not.toHaveLength(0)
    await desk.client.call('visits.close', { visit: visit.id })
    const later = await desk.client.call('administrations.proposal', { protocol: PEGS, client: ada })
    expect(later).toMatchObject({ visit: null, lastGivenOn: '2026-11-25', conditions: same.conditions })
  })
})

const reopen = async (moment: string) => {
  desk.clinic.close()
  desk = await openDesk({ folder: desk.folder, clock: testClock(moment) })
}

const tryAct = ({ id }: AdministrationView, body: EventBody) =>
  desk.client.call('administrations.act', { ...records, id, body })

describe('a test that was cut goes on where it stood', () => {
  test('STD-ADM-10 after a restart a trial in flight is void as interrupted, and nothing else is lost', async () => {
    const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
    await reopen('2026-11-25T09:05:00Z')
    const { view } = await desk.client.call('administrations.view', { ...records, id: running.id })
    expect(view.step?.name ?? running.step?.name).toBe(running.step?.name)
    const before = running.trials.filter(({ status }) => status !== 'running')
    expect(view.trials.slice(0, before.length)).toEqual(before)
    expect(view.trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'restart' } })
    expect(view.phase).toBe('confirming')
    const resumed = await act(desk, view, { kind: 'confirmed', what: 'resume' })
    expect(resumed.step).toMatchObject({ name: running.step?.name, place: running.step?.place })
    const done = await until(desk, resumed, ({ phase }) => phase === 'finished')
    expect(done.trials.some(({ status }) => status === 'running')).toBe(false)
  })

  test('a result that is read before the screen opens it does not hide that it was cut', async () => {
    const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
    await reopen('2026-11-25T09:05:00Z')
    await desk.client.call('administrations.result', { ...records, id: running.id })
    const { view } = await desk.client.call('administrations.view', { ...records, id: running.id })
    expect(view.trials.at(-1)).toMatchObject({ status: 'void' })
  })

  test('resumed four hours later it asks what to do, and going on is a deviation', async () => {
    const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
    await reopen('2026-11-25T13:00:00Z')
    const { view } = await desk.client.call('administrations.view', { ...records, id: running.id })
    const stale = await act(desk, view, { kind: 'confirmed', what: 'resume' })
    expect(stale.phase).toBe('stale')
    const refused = await desk.client.call('administrations.act', {
      ...records,
      id: view.id,
      body: { kind: 'paused', reason: 'x' },
    })
    expect(refused.taken).toBe(false)
    const on = await act(desk, stale, { kind: 'reopened', afterSeconds: 4 * 3600, choice: 'go_on' })
    expect(on.phase).toBe('giving')
    expect(on.deviations).toMatchObject([{ code: 'went_on_late' }])
  })

  test('resumed four hours later the practice can be repeated first, or the test closed with what it has', async () => {
    const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
    await reopen('2026-11-25T13:00:00Z')
    const { view } = await desk.client.call('administrations.view', { ...records, id: running.id })
    const stale = await act(desk, view, { kind: 'confirmed', what: 'resume' })
    const again = await act(desk, stale, {
      kind: 'reopened',
      afterSeconds: 4 * 3600,
      choice: 'practice_again',
    })
    expect(again.step).toMatchObject({ practice: true, place: { hand: 'right' } })
    const first = await until(desk, again, ({ phase }) => phase === 'finished')
    const { result } = await desk.client.call('administrations.result', { ...records, id: first.id })
    expect(result.trials.filter(({ practice, status }) => practice && status === 'standing')).toHaveLength(3)

    const other = await until(
      desk,
      await begin(desk, PEGS, ada),
      ({ step }) => step?.place['hand'] === 'left',
    )
    await reopen('2026-11-25T18:00:00Z')
    const late = await desk.client.call('administrations.view', { ...records, id: other.id })
    const asked = await act(desk, late.view, { kind: 'confirmed', what: 'resume' })
    const closed = await act(desk, asked, { kind: 'reopened', afterSeconds: 5 * 3600, choice: 'close' })
    const done = await until(desk, closed, ({ phase }) => phase === 'finished')
    const kept = await desk.client.call('administrations.result', { ...records, id: done.id })
    expect(kept.result.complete).toBe(false)
    const time = (hand: string) =>
      kept.result.scores.find(({ score, place }) => score === 'time' && place.hand === hand)
    expect(time('right')?.value).toBeGreaterThan(0)
    expect(time('left')).toMatchObject({ value: null, missing: { code: 'not_given' } })
  })

  test('a screen that slept through the longest gap is told so too', async () => {
    const clock = testClock()
    desk.clinic.close()
    desk = await openDesk({ folder: desk.folder, clock })
    const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
    clock.moment += 4 * 3600_000
    const { view } = await desk.client.call('administrations.view', { ...records, id: running.id })
    expect(view.trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'suspended' } })
    expect(view.phase).toBe('confirming')
  })

  describe('a screen left open in the middle of a step for four hours', () => {
    const clock = testClock()
    const left = async (holds: (view: AdministrationView) => boolean) => {
      desk.clinic.close()
      desk = await openDesk({ folder: desk.folder, clock })
      const view = await until(desk, await begin(desk, PEGS, ada), holds)
      clock.moment += 4 * 3600_000
      return view
    }

    test.each([
      { kind: 'remarked', text: 'Back again.' },
      { kind: 'interrupted', cause: 'focus_lost' },
      { kind: 'clock', clock: 'later', resolutionMs: 0.005, isolated: true },
      { kind: 'halted', stamp: null },
    ] as const)('the next act, $kind, is refused as stale, and the trial is void', async (body) => {
      const running = await left(isRunning)
      const stale = await tryAct(running, body)
      expect(stale).toMatchObject({ taken: false, refusal: { refused: 'stale' } })
      expect(stale.view).toMatchObject({ phase: 'confirming', because: 'suspended', remarks: [] })
      expect(stale.view.trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'suspended' } })
      const asked = await act(desk, stale.view, { kind: 'confirmed', what: 'resume' })
      expect(asked.phase).toBe('stale')
      const on = await act(desk, asked, { kind: 'reopened', afterSeconds: 4 * 3600, choice: 'go_on' })
      expect(on).toMatchObject({ phase: 'giving', step: { name: running.step?.name } })
      expect(on.deviations).toMatchObject([{ code: 'went_on_late' }])
      expect((await tryAct(on, { kind: 'remarked', text: 'Back again.' })).taken).toBe(true)
    })

    test('between two trials too: the practice can come again', async () => {
      const between = await left(
        ({ step, trials }) =>
          step !== null && trials.length > 0 && trials.every(({ status }) => status !== 'running'),
      )
      const { view } = await tryAct(between, { kind: 'remarked', text: 'Back again.' })
      expect(view.trials).toEqual(between.trials)
      const asked = await act(desk, view, { kind: 'confirmed', what: 'resume' })
      const again = await act(desk, asked, {
        kind: 'reopened',
        afterSeconds: 4 * 3600,
        choice: 'practice_again',
      })
      expect(again.step?.practice).toBe(true)
    })

    test('where all is given there is nothing left to be late for', async () => {
      const given = await left(({ step, phase }) => step === null && phase === 'giving')
      expect((await act(desk, given, { kind: 'finished' })).deviations).toEqual([])
    })
  })

  test('a look at it within the gap changes nothing', async () => {
    const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
    const { view } = await desk.client.call('administrations.view', { ...records, id: running.id })
    expect(view).toEqual(running)
    await goOn(desk, view)
  })
})
