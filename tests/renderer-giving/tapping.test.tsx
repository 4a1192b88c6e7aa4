import { describe, expect, it } from 'vitest'
import type { StepView } from '../../protocols/runner/view.ts'
import { mainIntent } from '../../renderer/screens/administration/intents.ts'
import { faceOf } from '../../renderer/steps/registry.ts'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { drawn, mainLabel } from './drawn.tsx'

const clean = (markup: string): void => expect(markup).not.toMatch(/NaN|undefined|\[object/)
const stepOf = (giving: Giving): StepView => {
  const { step } = giving.view()
  if (step === null) throw new Error('There is no step.')
  return step
}
const begun = (start: string): Giving =>
  new Giving(madeProtocol(`  - { tapped: taps, window: 10 s${start} }`)).begin()
/** What the main key does now, by its event. */
const press = (giving: Giving, after: number): string | null => {
  const body = mainIntent(giving.stamp(after), () => null)(giving.view())
  if (body !== null) giving.do(body)
  return body === null ? null : body.kind
}
const end = (giving: Giving): void => {
  const { startedAt } = stepOf(giving).face as { startedAt: { at: number } }
  giving.now = startedAt.at + 10_000
  giving.do(giving.body('window_ended', { at: giving.now, clock: giving.clock }))
}

describe('Taps on the stage', () => {
  it('say what opens the window: a cue, or the first tap', () => {
    const cued = drawn(begun(', start: { said: go }').view())
    clean(cued)
    expect(cued).toContain('You say: “go”')
    const free = begun('').arm()
    clean(drawn(free.view()))
    expect(drawn(free.view())).toContain('The first tap starts the clock')
    expect(mainLabel(drawn(free.view()))).toBe('First tap')
  })

  it('are all made by the main key, from making ready to keeping', () => {
    const giving = begun('')
    const events = [press(giving, 2000), press(giving, 2000), press(giving, 300), press(giving, 60)]
    end(giving)
    events.push(press(giving, 200))
    const { from, ms } = faceOf(stepOf(giving)).due(stepOf(giving), { at: 0, clock: giving.clock }) ?? {}
    expect([(from?.at ?? 0) - giving.now, ms]).toEqual([0, 1000])
    giving.now += 1000
    giving.do(giving.body('settled', { at: giving.now, clock: giving.clock }))
    events.push(press(giving, 500))
    expect(events).toEqual([
      'tapped.armed',
      'tapped.started',
      'tapped.tapped',
      'tapped.tapped',
      'tapped.tapped',
      'tapped.kept',
    ])
    expect(giving.rows('taps')).toEqual(['done count 3 after 1'])
  })

  it('show no count while the clock is hidden, and the count once it is over', () => {
    const giving = begun(', start: { said: go }').start().press('tapped', 300)
    clean(drawn(giving.view()))
    expect(drawn(giving.view())).not.toContain('1 tap')
    expect(faceOf(stepOf(giving)).isRunning(stepOf(giving))).toBe(true)
    end(giving)
    clean(drawn(giving.view()))
    expect(drawn(giving.view())).toContain('Time is over')
    expect(faceOf(stepOf(giving)).isRunning(stepOf(giving))).toBe(false)
    giving.now += 1000
    giving.do(giving.body('settled', { at: giving.now, clock: giving.clock }))
    expect(drawn(giving.view())).toContain('1 tap')
    expect(mainLabel(drawn(giving.view()))).toBe('Keep and go on')
  })

  it('are told apart by the file’s own bounce time while they are counted', () => {
    const giving = begun(', bounce: 40 ms').arm()
    const bounce = () => faceOf(stepOf(giving)).bounceMs(stepOf(giving))
    expect(bounce()).toBeNull()
    giving.press('started')
    expect(bounce()).toBe(40)
    end(giving)
    expect(bounce()).toBe(40)
  })

  it('come to rest at once on a page that was loaded anew', () => {
    const giving = begun('').start()
    end(giving)
    expect(faceOf(stepOf(giving)).due(stepOf(giving), { at: 7, clock: 'new' })).toEqual({
      event: 'settled',
      from: { at: 7, clock: 'new' },
      ms: 0,
    })
  })
})
