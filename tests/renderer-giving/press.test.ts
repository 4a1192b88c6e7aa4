import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type InputState,
  LONG_PRESS_MS,
  type Meaning,
  NOTHING_DOWN,
  type Press,
  RELEASE_CHATTER_MS,
  type Rules,
  type Signal,
  STUCK_MS,
  stuckKey,
  takeSignal,
  UNTOLD_RELEASE_MS,
} from '../../renderer/input/press.ts'

const RULES: Rules = { bounceMs: 150, evenInText: ['Escape'] }

const down = (at: number, more: Partial<Extract<Signal, { signal: 'down' }>> = {}): Signal => ({
  signal: 'down',
  code: 'Space',
  key: ' ',
  at,
  input: 'key',
  repeat: false,
  modified: false,
  inText: false,
  ...more,
})
const up = (at: number, code = 'Space'): Signal => ({ signal: 'up', code, at })
const held = (at: number): Signal => ({ signal: 'held', at })

/** Feeds signals one after another; gives what each meant. */
function meanings(signals: readonly Signal[], rules = RULES): readonly Meaning[] {
  let state: InputState = NOTHING_DOWN
  return signals.map((signal) => {
    const meaning = takeSignal(state, signal, rules)
    state = meaning.state
    return meaning
  })
}

const presses = (signals: readonly Signal[], rules = RULES): readonly Press[] =>
  meanings(signals, rules).flatMap(({ press }) => (press === null ? [] : [press]))

const stuckAt = (signals: readonly Signal[], at: number): boolean =>
  stuckKey(meanings(signals).at(-1)?.state ?? NOTHING_DOWN, at, 'Space')

describe('A press counts once, with its own time stamp', () => {
  it('takes a press when the key goes down, at the moment that the event names', () => {
    expect(presses([down(1000.25)])).toEqual([{ code: 'Space', key: ' ', at: 1000.25, input: 'key' }])
  })

  it('STD-ADM-5: a key held for 3 s is one press, however often it repeats', () => {
    const repeats = Array.from({ length: 90 }, (_, index) => down(500 + index * 33, { repeat: true }))
    expect(presses([down(0), ...repeats, up(3500)])).toHaveLength(1)
  })

  it('takes no second press before the key was let go, even where no repeat is marked', () => {
    expect(presses([down(0), down(400), down(800), up(900), down(1200)]).map(({ at }) => at)).toEqual([
      0, 1200,
    ])
  })

  it('takes a press that is no repeat long after the last one, though the release was never told', () => {
    expect(presses([down(0), down(UNTOLD_RELEASE_MS + 5), up(2100), down(5000)]).map(({ at }) => at)).toEqual(
      [0, UNTOLD_RELEASE_MS + 5, 5000],
    )
    const repeats = Array.from({ length: 300 }, (_, index) => down(500 + index * 33))
    expect(presses([down(0), ...repeats])).toHaveLength(1)
  })

  it('tells a key that nobody lets go as stuck, and a key that is up again as free', () => {
    expect(stuckAt([down(0)], STUCK_MS - 1)).toBe(false)
    expect(stuckAt([down(0)], STUCK_MS)).toBe(true)
    expect(stuckAt([down(0), up(200)], 10_000)).toBe(false)
    expect(stuckAt([down(0), { signal: 'lost' }], 10_000)).toBe(false)
  })

  it('drops a second press within the bounce time and takes one after it', () => {
    expect(presses([down(0), up(20), down(60), up(80), down(150)]).map(({ at }) => at)).toEqual([0, 150])
  })

  it('drops the chatter of contacts that open, however long the key was held', () => {
    const signals = [down(0), up(2000), down(2000 + RELEASE_CHATTER_MS - 1), up(2040), down(2300)]
    expect(presses(signals).map(({ at }) => at)).toEqual([0, 2300])
  })

  it('keeps keys apart: another key is no bounce of the first', () => {
    expect(presses([down(0), down(10, { code: 'KeyV', key: 'v' })]).map(({ code }) => code)).toEqual([
      'Space',
      'KeyV',
    ])
  })

  it('STD-A11Y-2: a press where text is typed is none, except the stop', () => {
    expect(presses([down(0, { inText: true }), down(10, { code: 'KeyV', key: 'v', inText: true })])).toEqual(
      [],
    )
    expect(presses([down(0, { code: 'Escape', key: 'Escape', inText: true })])).toHaveLength(1)
  })

  it('leaves presses with Ctrl, Alt or Meta to the system, and takes the bare key afterwards', () => {
    expect(presses([down(0, { modified: true }), down(300)]).map(({ at }) => at)).toEqual([300])
  })

  it('takes the key again after the focus was lost while it was held', () => {
    expect(presses([down(0), { signal: 'lost' }, down(1000)]).map(({ at }) => at)).toEqual([0, 1000])
  })

  it('holds for any run of signals: never two presses of a key within the bounce time, none out of order', () => {
    const signal = fc.tuple(fc.boolean(), fc.constantFrom('Space', 'KeyV'), fc.integer({ min: 0, max: 120 }))
    fc.assert(
      fc.property(fc.array(signal, { maxLength: 200 }), (steps) => {
        let at = 0
        const signals = steps.map(([isDown, code, wait]) => {
          at += wait
          return isDown ? down(at, { code }) : up(at, code)
        })
        const taken = presses(signals)
        for (const code of ['Space', 'KeyV']) {
          const times = taken.filter((press) => press.code === code).map((press) => press.at)
          const gaps = times.slice(1).map((time, index) => time - (times[index] ?? 0))
          expect(gaps.every((gap) => gap >= RULES.bounceMs)).toBe(true)
        }
      }),
    )
  })
})

const pedal = (at: number): Signal => down(at, { code: 'F13', key: 'F13', input: 'pedal' })
const longs = (signals: readonly Signal[]) => meanings(signals).filter(({ long }) => long !== null)

describe('A long press of the pedal means stop', () => {
  it('is told once, with the stamp of the press', () => {
    const told = longs([pedal(100), held(100 + LONG_PRESS_MS), held(5000)])
    expect(told).toHaveLength(1)
    expect(told[0]?.long?.at).toBe(100)
  })

  it('is not told of a pedal that was let go, nor of a key', () => {
    expect(longs([pedal(0), up(500, 'F13'), held(3000)])).toEqual([])
    expect(longs([down(0), held(3000)])).toEqual([])
  })

  it('is not told before its time', () => {
    expect(longs([pedal(0), held(LONG_PRESS_MS - 1)])).toEqual([])
  })
})
