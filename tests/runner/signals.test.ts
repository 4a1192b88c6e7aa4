import { beforeEach, describe, expect, test } from 'vitest'
import { Giving, madeProtocol } from './giving.ts'

let giving: Giving
beforeEach(() => {
  giving = new Giving(
    madeProtocol(`
  - repeat: run
    times: 3
    steps:
      - { counted: moved, window: 60 s, half-time: true, start: { said: go }, range: [0, 150] }
`),
  ).begin()
})

/** A signal as the screen tells it, at the clock's present. */
function signal(
  which: 'ready' | 'go' | 'half' | 'end',
  by: 'sound' | 'sight' = 'sound',
  run = 1,
): string | null {
  const { clock, now: at } = giving
  return giving.take({ kind: 'signalled', step: 'moved', place: { run }, signal: which, by, at, clock })
}

const told = (run: number) =>
  giving
    .view()
    .trials.find(({ place, status }) => place['run'] === run && status !== 'void')
    ?.signals?.map((each) => `${each.signal} ${each.by}`)

describe('signals that were given with a trial', () => {
  test('are kept with it, the one before its start included, with their moments and how they were given', () => {
    giving.arm()
    signal('ready')
    giving.press('started')
    signal('go', 'sight')
    giving.now += 60_000
    giving.do(giving.body('window_ended', { at: giving.now, clock: giving.clock }))
    signal('end')
    expect(told(1)).toEqual(['ready sound', 'go sight', 'end sound'])
    expect(giving.view().trials[0]?.signals?.at(-1)?.at).toBe(giving.now)
  })

  test('go to the trial that they belong to, even when the next is at hand', () => {
    giving.count(3, 60)
    expect(signal('end')).toBeNull()
    expect(told(1)).toEqual(['end sound'])
    giving.arm()
    signal('ready', 'sound', 2)
    giving.press('started')
    expect(told(2)).toEqual(['ready sound'])
  })

  test('change nothing else: not the step, not what undo takes back, not a row', () => {
    giving.start()
    const before = giving.view()
    signal('go')
    const { trials, ...after } = giving.view()
    expect(after).toEqual({ ...before, trials: undefined })
    expect(trials.map(({ signals: _signals, ...trial }) => trial)).toEqual(before.trials)
    giving.do({ kind: 'undone' })
    expect(giving.where()).toBe('moved at 1: armed')
  })
})
