import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { resumed, scoreOf } from './resumed.ts'

const PROTOCOL = madeProtocol(
  `
  - { tapped: try_out, practice: true, window: 5 s, start: { said: go } }
  - repeat: series
    times: 2
    steps:
      - { tapped: taps, window: 10 s, start: { from: begins }, bounce: 40 ms, voids: 1, counts-as: { unable: 0 } }
`,
  `
conditions:
  begins: { set-by: clinic, options: { go: Go cue, first_press: First press }, usual: go }
scores:
  - { score: rate, title: Taps, value: mean(taps.count), unit: "{count}", better: higher, decimals: 1 }
`,
)

let giving: Giving
const end = (at: number) => giving.take(giving.body('window_ended', { at, clock: giving.clock }))
const settle = () => {
  giving.now += 1000
  return giving.take(giving.body('settled', { at: giving.now, clock: giving.clock }))
}
const startedAt = (): number => {
  const since = giving.view().step?.face.startedAt as { at: number } | null | undefined
  return since?.at ?? 0
}

/** A whole trial: so many presses, so many ms apart, then the end of the window. */
function tap(presses: number, apart: number, seconds = 10): void {
  giving.start()
  const start = startedAt()
  for (let press = 0; press < presses; press += 1) giving.press('tapped', apart)
  giving.now = start + 1000 * seconds
  expect(end(giving.now)).toBeNull()
}
const keep = () => {
  expect(settle()).toBeNull()
  giving.press('kept')
}
const practised = (conditions: Record<string, string> = { begins: 'go' }) => {
  giving = new Giving(PROTOCOL).begin(undefined, conditions)
  tap(3, 200, 5)
  keep()
}

beforeEach(() => practised())

describe('taps within a window that a cue opens', () => {
  test('are the presses after the cue, each with its stamp', () => {
    tap(4, 250)
    keep()
    expect(giving.rows('taps')).toEqual(['1 done count 4 after 0'])
    const trial = giving.view().trials.at(-1)
    const stamps = trial?.stamps ?? []
    expect(stamps.slice(1).map((at, index) => at - (stamps[index] ?? 0))).toEqual([250, 250, 250, 250])
    expect(trial?.readings.count).toMatchObject({ unit: '{count}', typed: false })
    expect(giving.where()).toBe('taps at 2: waiting')
  })

  test('practice is given like any other and is no row', () => {
    expect(giving.view().trials).toMatchObject([{ step: 'try_out', practice: true }])
    expect(scoreOf(giving, 'rate')).toBeNull()
  })

  test('count by their stamps: the last instant is within, one later is kept and not counted', () => {
    giving.start()
    const start = startedAt()
    giving.press('tapped', 10_000)
    giving.press('tapped', 100)
    expect(end(start + 10_100)).toBeNull()
    expect(giving.rows('taps')).toEqual([])
    keep()
    expect(giving.rows('taps')).toEqual(['1 done count 1 after 1'])
    expect(
      giving
        .view()
        .trials.at(-1)
        ?.stamps.map((at) => at - start),
    ).toEqual([0, 10_000, 10_100])
  })

  test('a press handled after the end of the window still counts where its stamp lies within', () => {
    giving.start()
    const start = startedAt()
    expect(end(start + 10_000)).toBeNull()
    giving.now = start + 9_700
    giving.press('tapped', 200)
    giving.press('tapped', 300)
    giving.now = start + 10_200
    expect(settle()).toBeNull()
    giving.press('kept')
    expect(giving.rows('taps')).toEqual(['1 done count 1 after 1'])
  })

  test('a hand that taps on keeps nothing: the key is the examiner’s a second after the last press', () => {
    tap(2, 300)
    giving.press('tapped', 700)
    expect(giving.tryPress('kept', 100)).toBe('not_now')
    giving.now -= 200
    expect(settle()).toBe('key_dead')
    giving.now += 300
    expect(settle()).toBeNull()
    expect(giving.tryPress('tapped', 50)).toBe('not_now')
    giving.press('kept')
    expect(giving.rows('taps')).toEqual(['1 done count 2 after 1'])
  })

  test('within the bounce of the file are none', () => {
    giving.start().press('tapped', 300)
    expect(giving.tryPress('tapped', 39)).toBe('bounce')
    expect(giving.tryPress('tapped', 1)).toBeNull()
    expect(giving.view().step?.face).toMatchObject({ count: 2 })
  })

  test('the window ends by the clock, no earlier, and on the same clock', () => {
    giving.start()
    const start = startedAt()
    expect(end(start + 9_999)).toBe('window_not_over')
    giving.clock = 'page-2'
    expect(giving.tryPress('tapped', 10)).toBe('other_clock')
    expect(end(20_000)).toBeNull()
    expect(giving.where()).toBe('taps at 1: waiting')
    expect(giving.view().trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'clock_changed' } })
  })

  test('undo takes back one tap', () => {
    giving.start().press('tapped', 200).press('tapped', 200)
    giving.do({ kind: 'undone' })
    expect(giving.view().step?.face).toMatchObject({ count: 1 })
    expect(giving.where()).toBe('taps at 1: running')
  })

  test('a void trial is made good as often as allowed', () => {
    tap(4, 250)
    giving.press('voided')
    expect(giving.where()).toBe('taps at 1: waiting')
    giving.now += 2000
    giving.start().press('voided')
    expect(giving.rows('taps')).toEqual(['1 not_given'])
    expect(giving.where()).toBe('taps at 2: waiting')
  })

  test('a restart breaks a running trial off, and keeps one that was over', () => {
    giving.start().press('tapped', 200)
    const broken = resumed(giving)
    expect(broken.where()).toBe('taps at 1: waiting')
    expect(broken.view().trials.at(-1)).toMatchObject({ status: 'void', void: { cause: 'restart' } })
    giving.now = startedAt() + 10_000
    end(giving.now)
    const over = resumed(giving)
    expect(over.where()).toBe('taps at 1: over')
    expect(over.take(over.body('settled', { at: 10, clock: 'page-2' }))).toBeNull()
    over.press('kept')
    expect(over.rows('taps')).toEqual(['1 done count 1 after 0'])
  })

  test('closed as tried, unable counts as what the file says; as refused it has no value', () => {
    const close = (outcome: 'unable' | 'refused', series: number) =>
      giving.do({ kind: 'closed', what: 'trial', place: { series }, outcome, reason: '' })
    close('unable', 1)
    tap(4, 250)
    keep()
    expect(scoreOf(giving, 'rate')).toBe(2)
    giving.do({ kind: 'undone' }).do({ kind: 'undone' })
    giving.press('voided')
    close('refused', 2)
    expect(giving.rows('taps')).toEqual(['1 unable count 0', '2 refused'])
    expect(scoreOf(giving, 'rate')).toBeNull()
  })

  test('a count is put right only to a whole number', () => {
    tap(4, 250)
    keep()
    const trial = giving.view().trials.at(-1)?.id ?? ''
    const correct = (value: number) =>
      giving.take({ kind: 'corrected', trial, column: 'count', value, reason: 'Two fingers.' })
    expect(correct(3.5)).toBe('not_whole')
    expect(correct(-1)).toBe('not_whole')
    expect(correct(3)).toBeNull()
  })
})

describe('taps within a window that the first press opens', () => {
  beforeEach(() => practised({ begins: 'first_press' }))

  test('count from that press on', () => {
    expect(giving.view().step?.face).toMatchObject({ start: null, count: 0 })
    tap(4, 250)
    keep()
    expect(giving.rows('taps')).toEqual(['1 done count 5 after 0'])
    const { stamps = [] } = giving.view().trials.at(-1) ?? {}
    expect(stamps.slice(1).map((at, index) => at - (stamps[index] ?? 0))).toEqual([250, 250, 250, 250])
  })

  test('the first press bounces too', () => {
    giving.start()
    expect(giving.tryPress('tapped', 20)).toBe('bounce')
  })

  test('is what a step without a start cue means', () => {
    const protocol = madeProtocol('  - { tapped: taps, window: 10 s }')
    giving = new Giving(protocol).begin()
    expect(giving.view().step?.face).toMatchObject({ start: null })
  })
})
