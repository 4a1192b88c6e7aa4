import { describe, expect, it } from 'vitest'
import { heardAt } from '../../renderer/input/sound.ts'
import { signalsOf } from '../../renderer/steps/signals-of.ts'

/** An audio output as it stands: where the audio clock is, and what the output tells of itself. */
const output = (of: { contextTime: number; performanceTime: number }) => ({
  currentTime: 10.05,
  baseLatency: 0.01,
  outputLatency: 0.04,
  getOutputTimestamp: () => of,
})

describe('When a tone can be heard', () => {
  it('is told by the moment at which the output last was', () => {
    expect(heardAt(output({ contextTime: 10, performanceTime: 5000 }), 10.25, 9e9)).toBeCloseTo(5250, 9)
    expect(heardAt(output({ contextTime: 10, performanceTime: 5000 }), 9.5, 9e9)).toBeCloseTo(4500, 9)
  })

  it('is told by the delays of the output where it tells no moment yet', () => {
    expect(heardAt(output({ contextTime: 0, performanceTime: 0 }), 10.05, 7000)).toBeCloseTo(7050, 9)
    expect(heardAt(output({ contextTime: 0, performanceTime: 0 }), 11.05, 7000)).toBeCloseTo(8050, 9)
  })
})

const names = (timing: Parameters<typeof signalsOf>[0]) =>
  signalsOf(timing).map(({ signal, ms }) => `${signal} ${ms}`)

describe('The signals of a trial', () => {
  const startedAt = { at: 400, clock: 'page' }
  const none = { isReady: false, goes: false, startedAt: null, lasts: 60, halfTime: true }
  it('are ready once it is made ready, then go, half and end on the clock of its start', () => {
    expect(names(none)).toEqual([])
    expect(names({ ...none, isReady: true })).toEqual(['ready 0'])
    expect(names({ ...none, startedAt, goes: true })).toEqual(['go 0', 'half 30000', 'end 60000'])
    expect(signalsOf({ ...none, startedAt }).every(({ from }) => from === startedAt)).toBe(true)
  })

  it('have a half only where the file says so, and an end only where the clock ends it', () => {
    expect(names({ ...none, startedAt, halfTime: false })).toEqual(['end 60000'])
    expect(names({ ...none, startedAt, lasts: null })).toEqual([])
  })
})
