/** What goes wrong while a test is given, and what is put right afterwards: nothing is lost, nothing becomes a zero. */
import { beforeEach, describe, expect, test } from 'vitest'
import { CLOSINGS } from '../../protocols/language/model.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import type { Result, ScoreValue } from '../../protocols/scoring/result.ts'
import {
  act,
  addClient,
  begin,
  type Desk,
  give,
  goOn,
  GRIP,
  isFinished,
  isRunning,
  openDesk,
  PEGS,
  until,
} from './desk.ts'
import { printed } from './printed.ts'
import { profileOf } from './profile.ts'

let desk: Desk
let ada = ''
beforeEach(async () => {
  desk = await openDesk()
  ada = await addClient(desk, 'Ada Marsh')
  return () => {
    desk.clinic.close()
    if (desk.defects.length > 0) throw new Error('a fault of the program itself', { cause: desk.defects })
  }
})

const records = { store: 'records' } as const
const resultOf = async (id: string): Promise<Result> =>
  (await desk.client.call('administrations.result', { ...records, id })).result
const told = (id: string) => desk.client.call('administrations.result', { ...records, id })
const tryAct = (view: AdministrationView, body: EventBody) =>
  desk.client.call('administrations.act', { ...records, id: view.id, body })
const scoreOf = ({ scores }: Result, score: string, hand: string): ScoreValue => {
  const found = scores.find((one) => one.score === score && one.place['hand'] === hand)
  if (!found) throw new Error(`no ${score} of the ${hand} hand`)
  return found
}
const meanOf = (result: Result) => scoreOf(result, 'mean_of_3', 'right').value ?? Number.NaN
const at = (step: string, state: string) => (view: AdministrationView) =>
  view.step?.name === step && view.step.state === state
const ownAct = ({ step }: AdministrationView, event: string, data: object): EventBody => {
  if (step === null) throw new Error('no step is at hand')
  return { kind: `${step.kind}.${event}`, step: step.name, place: step.place, ...data }
}

const WORDS = {
  unable: 'tried, unable',
  refused: 'refused',
  not_allowed: 'not allowed',
  absent: 'part absent',
  not_given: 'not given',
} as const

describe('a hand that ends without a result', () => {
  test.each(CLOSINGS)(
    'as %s has its own word on screen and paper, no value, and the rest goes on',
    async (outcome) => {
      const first = await until(desk, await begin(desk, PEGS, ada), isRunning)
      const stopped = await goOn(desk, first)
      const place = stopped.step?.place ?? {}
      const kept = await goOn(desk, stopped)
      expect(kept.trials.at(-1)?.place['hand']).toBe('right')
      const other = await until(desk, kept, ({ step }) => step?.place['hand'] === 'left')
      expect(place).not.toEqual(other.step?.place)
      const closed = await act(desk, other, {
        kind: 'closed',
        what: 'hand',
        place: other.step?.place ?? {},
        outcome,
        reason: 'Said so.',
      })
      const done = await until(desk, closed, isFinished)
      const { result, shortText } = await told(done.id)
      expect(scoreOf(result, 'time', 'right').value).toBeGreaterThan(0)
      const left = scoreOf(result, 'time', 'left')
      expect([left.value, left.missing?.code]).toEqual([null, outcome])
      expect(left.norms.every(({ strata }) => strata.length === 0)).toBe(true)
      expect(shortText).toContain(`left hand no value (${WORDS[outcome]})`)
      const paper = await printed(desk, done.id)
      expect(paper).toContain(`trial 3: ${WORDS[outcome]}`)
      expect(paper).toContain(`${WORDS[outcome]}; Said so.`)
      expect(`${shortText} ${paper}`).not.toMatch(/left hand 0/)
    },
  )

  test('tried and unable counts as zero only where the protocol says so, and says that it was closed', async () => {
    const first = await until(desk, await begin(desk, GRIP, ada), at('squeeze', 'waiting'))
    const closed = await act(desk, first, {
      kind: 'closed',
      what: 'hand',
      place: first.step?.place ?? {},
      outcome: 'unable',
      reason: '',
    })
    const result = await resultOf((await until(desk, closed, isFinished)).id)
    expect(scoreOf(result, 'mean_of_3', 'right').value).toBe(0)
    const rows = result.trials.filter(({ practice, place }) => !practice && place['hand'] === 'right')
    expect(rows.length).toBeGreaterThan(0)
    expect(rows.every(({ outcome }) => outcome === 'unable')).toBe(true)
  })
})

describe('a value that can hardly be', () => {
  test('STD-ADM-12 a grip of 900 kgf is asked for again, kept only when it is confirmed, and marked', async () => {
    const first = await until(desk, await begin(desk, GRIP, ada), at('squeeze', 'waiting'))
    const asked = await tryAct(first, ownAct(first, 'entered', { value: 900, confirmed: false }))
    expect(asked).toMatchObject({
      taken: false,
      refusal: { refused: 'out_of_range', detail: { value: 900, lowest: 0, highest: 100 } },
    })
    expect(asked.view).toEqual(first)
    const kept = await act(desk, first, ownAct(first, 'entered', { value: 900, confirmed: true }))
    const done = await until(desk, kept, isFinished)
    const odd = (await resultOf(done.id)).trials.find(({ readings }) => readings['value']?.value === 900)
    expect(odd?.readings['value']).toMatchObject({ value: 900, typed: true, confirmed: true })
    expect(await printed(desk, done.id)).toContain(
      '900 kgf, typed by hand, confirmed outside the plausible range',
    )
  })

  test('text, and a number finer than the dial, belong in no reading', async () => {
    const first = await until(desk, await begin(desk, GRIP, ada), at('squeeze', 'waiting'))
    for (const value of ['thirty', null, Number.NaN, {}]) {
      const body = ownAct(first, 'entered', { value, confirmed: true })
      const answer = await tryAct(first, body).catch((error: unknown) => error)
      expect(answer).not.toMatchObject({ taken: true })
    }
    const fine = await tryAct(first, ownAct(first, 'entered', { value: 30.25, confirmed: false }))
    expect(fine).toMatchObject({ taken: false, refusal: { refused: 'too_many_decimals' } })
  })
})

test('STD-ADM-8 a stop whose stamp lies before its start is refused, and the trial runs on', async () => {
  const running = await until(desk, await begin(desk, PEGS, ada), isRunning)
  const started = running.trials.at(-1)?.stamps[0] ?? 0
  const stop = (ms: number) =>
    ownAct(running, 'stopped', { stamp: { at: started + ms, clock: 'test', input: 'key', late: 0 } })
  expect(await tryAct(running, stop(-500))).toMatchObject({
    taken: false,
    refusal: { refused: 'stop_before_start' },
    view: running,
  })
  const stopped = await act(desk, running, stop(19_000))
  expect(stopped.trials.at(-1)?.readings['time']?.value).toBe(19)
})

test('a typed time is marked in the event, on the trial and on paper', async () => {
  const armed = await until(desk, await begin(desk, PEGS, ada), at('run', 'waiting'))
  const typed = await act(desk, armed, ownAct(armed, 'typed', { seconds: 21.37, confirmed: false }))
  const done = await until(desk, typed, isFinished)
  const trial = (await resultOf(done.id)).trials.find(({ input }) => input === 'typed')
  expect(trial).toMatchObject({ stamps: [], readings: { time: { value: 21.37, typed: true } } })
  const kinds = desk.clinic.stores.records.administration(done.id).map(({ body }) => body.kind)
  expect(kinds).toContain('timed.typed')
  expect((await told(done.id)).shortText).toContain('right hand 21.4 s (typed by hand)')
  const paper = await printed(desk, done.id)
  expect(paper).toContain('trial 2, typed by hand')
  expect(paper).toContain('21.37 s, typed by hand')
})

test('a splint is recorded and printed', async () => {
  const begun = await begin(desk, PEGS, ada, { splint: 'Thumb splint, left hand' })
  const done = await until(desk, begun, isFinished)
  expect(await printed(desk, done.id)).toContain('splint or glove: Thumb splint, left hand')
})

test('screens are told that the open visit holds one test more, or one fewer', async () => {
  const berit = await addClient(desk, 'Berit Holm')
  const pushes: string[] = []
  desk.client.listen(({ push }) => pushes.push(push))
  const { id } = await give(desk, PEGS, ada)
  expect(pushes.filter((push) => push === 'clinic')).toHaveLength(1)
  await desk.client.call('administrations.move', { id, client: berit, reason: 'Mixed up.' })
  expect(pushes.filter((push) => push === 'clinic')).toHaveLength(2)
})

describe('put right afterwards', () => {
  test('a mistyped value: everything is worked out again, and the first entry stands beside it on paper', async () => {
    const { id } = await give(desk, GRIP, ada)
    const before = await resultOf(id)
    const trial = before.trials.find(({ practice, place }) => !practice && place['hand'] === 'right')
    const first = Number(trial?.readings['value']?.value)
    const now = first + 12
    const view = (await desk.client.call('administrations.view', { ...records, id })).view
    const body = {
      kind: 'corrected',
      trial: trial?.id ?? '',
      column: 'value',
      value: now,
      reason: 'Misread dial.',
    } as const
    await act(desk, view, body)
    const after = await resultOf(id)
    expect(meanOf(after) - meanOf(before)).toBeCloseTo(4, 9)
    expect(after.trials.find((one) => one.id === trial?.id)?.readings['value']).toMatchObject({
      value: now,
      corrected: { first, reason: 'Misread dial.' },
    })
    const paper = await printed(desk, id)
    expect(paper).toContain(`${now} kgf (first ${first} kgf; Misread dial.)`)
  })

  test('hands that were mixed up: every trial changes its hand, scores follow, and a deviation says so', async () => {
    const { id } = await give(desk, PEGS, ada)
    const before = await resultOf(id)
    const view = (await desk.client.call('administrations.view', { ...records, id })).view
    await act(desk, view, { kind: 'relabelled', reason: 'Sat opposite.' })
    const after = await resultOf(id)
    expect(scoreOf(after, 'time', 'left').value).toBe(scoreOf(before, 'time', 'right').value)
    expect(scoreOf(after, 'time', 'right').value).toBe(scoreOf(before, 'time', 'left').value)
    expect(after.deviations.map(({ code }) => code)).toContain('hands_relabelled')
    expect(await printed(desk, id)).toContain('the hands were mixed up')
  })

  test('wrong examiner and day: both stand on paper with what stood there first', async () => {
    const odile = await desk.client.call('users.add', { name: 'Odile Brack' })
    const { id } = await give(desk, PEGS, ada)
    const view = (await desk.client.call('administrations.view', { ...records, id })).view
    const examiner = { id: odile.id, name: 'Odile Brack' }
    await act(desk, view, {
      kind: 'reattributed',
      examiner,
      on: '2026-11-24',
      reason: 'Odile gave it yesterday.',
    })
    const after = await resultOf(id)
    expect([after.examiner, after.on]).toEqual(['Odile Brack', '2026-11-24'])
    const paper = await printed(desk, id)
    for (const words of ['Odile Brack', '24 November 2026', 'Ada Venn', 'Odile gave it yesterday.'])
      expect(paper).toContain(words)
  })

  test('wrong client, noticed at the end: scored by the right one’s age and sex, the first keeps a trace', async () => {
    const facts = {
      birth: { known: 'date', date: '1948-02-10' },
      sex: 'M',
      dominantBefore: 'left',
      usedNow: 'left',
    } as const
    const profile = profileOf({ name: 'Berit Holm', facts })
    const berit = (await desk.client.call('clients.add', { profile })).id
    const { id } = await give(desk, PEGS, ada)
    const before = await resultOf(id)
    await desk.client.call('administrations.move', { id, client: berit, reason: 'Two clients in one room.' })
    const after = await resultOf(id)
    const strata = (result: Result) =>
      scoreOf(result, 'time', 'right').norms.find(({ norm }) => norm === 'adults_1985')?.strata
    expect([before.age, after.age]).toEqual([
      { from: 41, to: 41 },
      { from: 78, to: 78 },
    ])
    expect(strata(before)).toMatchObject([{ sex: 'F', ageMin: 40 }])
    expect(strata(after)).toMatchObject([{ sex: 'M', ageMin: 75 }])
    expect(scoreOf(after, 'time', 'right').value).toBe(scoreOf(before, 'time', 'right').value)
    const first = await desk.client.call('clients.read', { id: ada })
    expect(first.administrations).toMatchObject([{ id, enteredInError: true }])
    const paper = await printed(desk, id)
    expect(paper).toContain('Berit Holm')
    expect(paper).not.toContain('Ada Marsh')
    expect(paper).toContain('Two clients in one room.')
    expect(paper.replaceAll(`administration ${id}`, '')).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}/)
  })
})
