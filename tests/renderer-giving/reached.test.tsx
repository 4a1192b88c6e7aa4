import { describe, expect, it } from 'vitest'
import { faceOf } from '../../renderer/steps/registry.ts'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { drawn, mainLabel } from './drawn.tsx'

const PROTOCOL = madeProtocol(`
  - timed: turn
    start: { said: go }
    stop: { seen: last peg in }
    limit: 300 s
    reached: { pegs: { of: 16, text: Pegs in place } }
    splits: { half: The eighth peg is in., corner: The corner is turned. }
`)
const clean = (markup: string): void => expect(markup).not.toMatch(/NaN|undefined|\[object/)

describe('A timed trial on the stage', () => {
  it('has a digit for each moment on the way while the clock runs, and says which is stamped', () => {
    const giving = new Giving(PROTOCOL).begin().start()
    const before = drawn(giving.view())
    clean(before)
    expect(before).toMatch(/The eighth peg is in\..*<kbd[^>]*>1<.*The corner is turned\..*<kbd[^>]*>2</)
    expect(before).not.toContain('Stamped')
    giving.do(giving.body('split', { what: 'half', stamp: giving.stamp(20_000) }))
    expect(drawn(giving.view())).toContain('Stamped')
    expect(mainLabel(drawn(giving.view()))).toBe('Stop')
  })

  it('asks at the limit how far it went, sounds its end once, and tells it when it is kept', () => {
    const giving = new Giving(PROTOCOL).begin().start()
    const signals = () => {
      const { step } = giving.view()
      return (
        step &&
        faceOf(step)
          .signals(step)
          .map(({ signal, ms }) => `${signal} ${ms}`)
      )
    }
    expect(signals()).toEqual(['end 300000'])
    giving.now += 300_000
    giving.do(giving.body('limit_reached', { at: giving.now, clock: giving.clock }))
    const asked = drawn(giving.view())
    clean(asked)
    expect(asked).toContain('How far did it go? Pegs in place, of 16')
    expect(mainLabel(asked)).toBe('Type how far it went first')
    expect(signals()).toEqual([])
    giving.do(giving.body('reached', { what: 'pegs', count: 9 }))
    expect(drawn(giving.view())).toContain('Pegs in place: 9')
    giving.now += 1500
    giving.press('kept')
    clean(drawn(giving.view()))
  })

  it('shows neither where the file has none of them', () => {
    const plain = madeProtocol('  - { timed: run, start: { said: go }, stop: { seen: home }, limit: 60 s }')
    const giving = new Giving(plain).begin().start()
    expect(drawn(giving.view())).not.toContain('Stamp on the way')
    giving.now += 60_000
    giving.do(giving.body('limit_reached', { at: giving.now, clock: giving.clock }))
    expect(giving.where()).toBe('run: stopped')
  })
})
