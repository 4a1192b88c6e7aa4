import { describe, expect, test } from 'vitest'
import type { EventBody } from '../../protocols/runner/events.ts'
import { arm, facts, Giving, libraryProtocol, madeProtocol, NO_CONDITIONS, uuid } from './giving.ts'

const TIMED = `
  - for-each: hand
    in: hands
    order: right-first
    steps:
      - { position: seated }
      - { timed: try_out, practice: true, start: { said: go }, stop: { seen: Done. } }
      - repeat: attempt
        times: 2
        steps:
          - { timed: run, start: { said: go }, stop: { seen: Done. } }
`
const PROTOCOL = madeProtocol(
  TIMED,
  `
precautions:
  - { id: swallows, ask: Could a peg be swallowed? }
conditions:
  board_build: { set-by: clinic, options: { square: Square, round: Round } }
`,
)

const toRun = () => new Giving(PROTOCOL).begin(undefined, { board_build: 'square' }).toTrial().time(9)

const restart = (giving: Giving) => giving.do({ kind: 'interrupted', cause: 'restart' })
const resume = (giving: Giving) => giving.do({ kind: 'confirmed', what: 'resume' })

describe('before the first step', () => {
  const answers = {
    kind: 'prepared',
    precautions: { swallows: { answer: 'not_present' } },
    restrictions: [],
    painNow: null,
    visit: NO_CONDITIONS,
    kit: [],
    conditions: { board_build: 'square' },
  } satisfies EventBody

  test('nothing happens to an administration that was not opened', () => {
    const giving = new Giving(PROTOCOL)
    expect(giving.take({ kind: 'remarked', text: 'Hello' })).toBe('not_in_phase')
    expect(giving.take({ kind: 'confirmed', what: 'start' })).toBe('not_in_phase')
    expect(giving.view().phase).toBe('preparing')
    expect(giving.view().offers.map(({ event }) => event)).toEqual(['opened'])
  })

  test('every precaution is answered and every condition is one of the file', () => {
    const giving = new Giving(PROTOCOL)
    giving.open(undefined, { board_build: 'square' })
    const prepare = (change: object) => giving.take({ ...answers, ...change } as never)
    expect(prepare({ precautions: {} })).toBe('precaution_unanswered')
    expect(prepare({ conditions: { board_build: 'oval' } })).toBe('no_such_option')
    expect(prepare({ conditions: { colour: 'red' } })).toBe('no_such_condition')
    expect(prepare({ conditions: {} })).toBe('condition_missing')
    expect(prepare({})).toBeNull()
  })

  test('a test that a precaution speaks against is not begun', () => {
    const giving = new Giving(PROTOCOL)
    giving.open(undefined, { board_build: 'square' })
    giving.do({ ...answers, precautions: { swallows: { answer: 'not_given' } } })
    expect(giving.take({ kind: 'confirmed', what: 'start' })).toBe('not_to_be_given')
    giving.do({ kind: 'withdrawn', reason: 'Pegs could be swallowed' })
    expect(giving.view()).toMatchObject({ phase: 'withdrawn', trials: [] })
  })

  test('only the start can be confirmed, and only a resume later', () => {
    const giving = new Giving(PROTOCOL)
    giving.open(undefined, { board_build: 'square' })
    expect(giving.take({ kind: 'confirmed', what: 'resume' })).toBe('wrong_confirmation')
    giving.do({ kind: 'confirmed', what: 'start' })
    restart(giving)
    expect(giving.take({ kind: 'confirmed', what: 'start' })).toBe('wrong_confirmation')
  })
})

describe('interrupted', () => {
  test('STD-ADM-10 a trial in flight is void as interrupted, and giving lands on the same step', () => {
    const giving = toRun().start()
    restart(giving)
    expect(giving.where()).toBe('confirming, run at right, 1: waiting')
    expect(giving.view().because).toBe('restart')
    expect(giving.view().trials.at(-1)).toMatchObject({
      step: 'run',
      status: 'void',
      readings: {},
      void: { cause: 'restart', happening: null, valueSeen: false },
    })
    resume(giving)
    expect(giving.where()).toBe('run at right, 1: waiting')
    expect(giving.view().unexplained).toEqual([])
    giving.time(20).time(21).toTrial()
    expect(giving.rows('run')).toEqual(['right 1 done time 20', 'right 2 done time 21'])
    expect(giving.where()).toBe('try_out at left: waiting')
  })

  test('a time that was stopped but not kept yet is still there', () => {
    const giving = toRun().start().press('stopped', 20_000)
    restart(giving)
    resume(giving)
    expect(giving.where()).toBe('run at right, 1: stopped')
    giving.press('kept')
    expect(giving.rows('run')).toEqual(['right 1 done time 20'])
  })

  test('a clock that was armed has to be armed again', () => {
    const giving = toRun().arm()
    restart(giving)
    resume(giving)
    expect(giving.where()).toBe('run at right, 1: waiting')
  })

  test('a glance at another window voids a running trial and nothing else', () => {
    const giving = toRun()
    giving.do({ kind: 'interrupted', cause: 'focus_lost' })
    expect(giving.where()).toBe('run at right, 1: waiting')
    giving.arm().do({ kind: 'interrupted', cause: 'focus_lost' })
    expect(giving.where()).toBe('run at right, 1: armed')
    giving.press('started').do({ kind: 'interrupted', cause: 'focus_lost' })
    expect(giving.where()).toBe('run at right, 1: waiting')
    expect(giving.view().trials.at(-1)?.void?.cause).toBe('focus_lost')
  })

  test.each(['suspended', 'clock_changed'] as const)('%s is confirmed again', (cause) => {
    const giving = toRun().start().do({ kind: 'interrupted', cause })
    expect(giving.view()).toMatchObject({ phase: 'confirming', because: cause })
  })

  test('nothing is cut before the first step or after the end', () => {
    const giving = new Giving(PROTOCOL).open(undefined, { board_build: 'square' })
    expect(giving.take({ kind: 'interrupted', cause: 'restart' })).toBe('not_in_phase')
  })

  test('a void by interruption does not use up the voids that may be made good', () => {
    const giving = new Giving(
      madeProtocol('  - { timed: run, voids: 0, start: { said: go }, stop: { seen: Done. } }'),
    ).begin()
    giving.start()
    restart(giving)
    resume(giving)
    expect(giving.where()).toBe('run: waiting')
    expect(giving.view().step?.face).toMatchObject({ attempt: 2, voidsLeft: 0 })
  })
})

const reopened = (giving: Giving, seconds = 4 * 3600) => {
  giving.wall += seconds
  restart(giving)
  return resume(giving)
}

describe('after the longest gap', () => {
  test('client and hand are confirmed, then a choice is due', () => {
    const giving = reopened(toRun())
    expect(giving.view().phase).toBe('stale')
    expect(giving.tryPress('armed')).toBe('not_in_phase')
  })

  test('a short gap asks for no choice', () => {
    expect(reopened(toRun(), 14 * 60).view().phase).toBe('giving')
  })

  test('going on is a deviation', () => {
    const giving = reopened(toRun())
    giving.do({ kind: 'reopened', afterSeconds: 14_400, choice: 'go_on' })
    expect(giving.where()).toBe('run at right, 1: waiting')
    expect(giving.view().deviations).toMatchObject([{ code: 'went_on_late', norms: 'caution' }])
  })

  test('the practice can come again; then the test goes on where it was', () => {
    const giving = reopened(toRun().time(20))
    expect(giving.view().step).toMatchObject({ name: 'run', place: { hand: 'right', attempt: 2 } })
    giving.do({ kind: 'reopened', afterSeconds: 14_400, choice: 'practice_again' })
    expect(giving.where()).toBe('try_out at right: waiting')
    giving.time(8)
    expect(giving.where()).toBe('run at right, 2: waiting')
    giving.time(21)
    expect(giving.rows('run')).toEqual(['right 1 done time 20', 'right 2 done time 21'])
    expect(giving.where()).toBe('seated at left: waiting')
  })

  test('the practice comes again before a time that still waits to be kept', () => {
    const giving = reopened(toRun().start().press('stopped', 20_000))
    giving.do({ kind: 'reopened', afterSeconds: 14_400, choice: 'practice_again' }).time(8)
    expect(giving.where()).toBe('run at right, 1: stopped')
    giving.press('kept')
    expect(giving.rows('run')).toEqual(['right 1 done time 20'])
    expect(giving.where()).toBe('run at right, 2: waiting')
  })

  test('what was stopped before a repeated practice stands when the test ends there', () => {
    const giving = reopened(toRun().start().press('stopped', 20_000))
    giving.do({ kind: 'reopened', afterSeconds: 14_400, choice: 'practice_again' })
    giving.do({ kind: 'closed', what: 'test', place: {}, outcome: 'refused', reason: '' })
    expect(giving.rows('run')).toEqual([
      'right 1 done time 20',
      'right 2 refused',
      'left 1 refused',
      'left 2 refused',
    ])
  })

  test('a hand that is closed during the repeated practice is over', () => {
    const giving = reopened(toRun().time(20))
    giving.do({ kind: 'reopened', afterSeconds: 14_400, choice: 'practice_again' })
    giving.do({ kind: 'closed', what: 'hand', place: { hand: 'right' }, outcome: 'refused', reason: '' })
    expect(giving.rows('run')).toEqual(['right 1 done time 20', 'right 2 refused'])
    giving.toTrial().time(8)
    expect(giving.where()).toBe('run at left, 1: waiting')
  })

  test('it can close with what was measured: what was due is not given', () => {
    const giving = reopened(toRun().time(20))
    giving.do({ kind: 'reopened', afterSeconds: 14_400, choice: 'close' })
    expect(giving.where()).toBe('end')
    expect(giving.rows('run')).toEqual([
      'right 1 done time 20',
      'right 2 not_given',
      'left 1 not_given',
      'left 2 not_given',
    ])
  })

  test('a pause that lasted as long asks the same', () => {
    const giving = toRun().do({ kind: 'paused', reason: 'Visitor' })
    giving.wall += 3600
    giving.do({ kind: 'resumed' })
    expect(giving.view().phase).toBe('confirming')
    expect(resume(giving).view().phase).toBe('stale')
  })

  test('so does a restart in a pause', () => {
    const giving = toRun().do({ kind: 'paused', reason: 'Visitor' })
    giving.wall += 3600
    restart(giving)
    expect(resume(giving).view().phase).toBe('stale')
  })

  test('STD-FMT-6 the gap is counted across a change of zone, and no duration is', () => {
    const giving = toRun().start()
    const at = giving.at.bind(giving)
    giving.press('stopped', 20_000)
    // The clocks go forward: 10:00:51+01:00 is followed by what reads 11:01 and is ten seconds later.
    giving.at = () => at().replace('T09', 'T10').replace('+01:00', '+02:00')
    giving.press('kept')
    restart(giving)
    expect(resume(giving).view().phase).toBe('giving')
    expect(giving.rows('run')).toEqual(['right 1 done time 20'])
  })
})

describe('paused', () => {
  test('not while a trial runs; afterwards all is where it was', () => {
    const giving = toRun().start()
    expect(giving.view().offers).toContainEqual({ event: 'paused', open: false, main: false })
    expect(giving.take({ kind: 'paused', reason: 'Visitor' })).toBe('trial_running')
    giving.press('stopped', 9000).do({ kind: 'paused', reason: 'Visitor' })
    expect(giving.view()).toMatchObject({ phase: 'paused', because: 'Visitor' })
    expect(giving.tryPress('kept')).toBe('not_in_phase')
    giving.do({ kind: 'resumed' })
    expect(giving.where()).toBe('run at right, 1: stopped')
    expect(giving.view().because).toBeNull()
  })

  test('every pause is told with its reason, from when to when; one that is taken back has never been', () => {
    const giving = toRun()
    const pauses = () => giving.view().pauses.map(({ reason, from, to }) => [reason, from, to])
    const from = giving.at()
    giving.do({ kind: 'paused', reason: 'Visitor' })
    expect(pauses()).toEqual([['Visitor', from, null]])
    giving.wall += 60
    const to = giving.at()
    giving.do({ kind: 'resumed' })
    giving.do({ kind: 'paused', reason: 'A call' })
    giving.wall += 60
    const cut = giving.at()
    restart(giving)
    expect(pauses()).toEqual([
      ['Visitor', from, to],
      ['A call', to, cut],
    ])
    resume(giving).do({ kind: 'paused', reason: 'Glasses' }).do({ kind: 'undone' })
    expect(pauses()).toHaveLength(2)
    giving.do({ kind: 'paused', reason: 'Glasses' }).do({ kind: 'withdrawn', reason: 'Wrong test' })
    expect(pauses()[2]).toEqual(['Glasses', cut, cut])
  })
})

describe('the end', () => {
  const one = madeProtocol('  - { timed: run, start: { said: go }, stop: { seen: Done. } }')

  test('waits for the reason of every void trial', () => {
    const giving = new Giving(one).begin().start().press('voided', 3000).time(9)
    expect(giving.where()).toBe('end')
    const [trial] = giving.view().unexplained
    expect(giving.view().offers).toContainEqual({ event: 'finished', open: false, main: true })
    expect(giving.take({ kind: 'finished' })).toBe('void_unexplained')
    const explain = (happening: string) =>
      giving.take({ kind: 'explained', trial: trial ?? '', happening, remark: 'Rang' })
    expect(explain('noise')).toBe('no_void_reason')
    expect(explain('interruption')).toBeNull()
    expect(giving.view().trials[0]?.void).toMatchObject({ happening: 'interruption', remark: 'Rang' })
    expect(giving.take({ kind: 'finished' })).toBeNull()
    expect(giving.view().phase).toBe('finished')
  })

  test('a wrong test that was left after a trial keeps it', () => {
    const giving = new Giving(one).begin().start()
    giving.do({ kind: 'withdrawn', reason: 'Wrong test' })
    expect(giving.view()).toMatchObject({
      phase: 'withdrawn',
      because: 'Wrong test',
      trials: [{ status: 'void', void: { cause: 'withdrawn' } }],
    })
    expect(giving.take({ kind: 'withdrawn', reason: 'Again' })).toBe('not_in_phase')
  })
})

test('the same event is taken once', () => {
  const giving = toRun()
  const [last] = giving.log.slice(-1)
  if (last === undefined) throw new Error('Nothing was taken.')
  expect(giving.runner.take(giving.administration, last)).toMatchObject({ refused: 'taken_already' })
})

test('an event names its step and place: another is refused', () => {
  const giving = toRun()
  const armed = giving.body('armed', { stamp: giving.stamp() })
  expect(giving.take({ ...armed, place: { hand: 'left', attempt: 1 } } as typeof armed)).toBe('wrong_place')
  expect(giving.take({ ...armed, place: { hand: 'right' } } as typeof armed)).toBe('wrong_place')
  expect(giving.take({ ...armed, step: 'try_out' } as typeof armed)).toBe('wrong_step')
  expect(giving.take({ ...armed, kind: 'timed.flown' } as typeof armed)).toBe('unknown_event')
  expect(giving.take({ kind: 'juggled.armed', step: 'run', place: {} })).toBe('unknown_event')
  expect(giving.take(armed)).toBeNull()
})

test('facts of the client can be read in the view, and who it is given to', () => {
  const known = facts({ arms: { right: arm('affected'), left: arm('unaffected') } })
  const giving = new Giving(libraryProtocol('grip_strength')).open(known)
  expect(giving.view()).toMatchObject({ client: uuid(901), facts: known, examiner: 'Ida', on: '2026-03-02' })
  expect(giving.view().firstHand).toEqual({ hand: 'left', rule: expect.any(String) })
})
