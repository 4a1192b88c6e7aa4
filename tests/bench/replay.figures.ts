/** Replaying a long log, beside the chart library alone stepping a chart of two states as often. */
import { test } from 'vitest'
import { createMachine, initialTransition, transition } from 'xstate'
import { runnerFor } from '../../protocols/runner/index.ts'
import { Giving, madeProtocol } from '../runner/giving.ts'
import { figure, turnAbout } from './measure.ts'

const EVENTS = 100_000

const MANY = madeProtocol(`
  - repeat: run
    times: { least: ${EVENTS}, most: ${EVENTS} }
    steps:
      - { measured: force, unit: kgf, range: [0, 100] }
`)

/** A log of a hundred thousand events: readings entered and kept, one after the other. */
function longLog() {
  const giving = new Giving(MANY).begin()
  const { log } = giving
  const made = [...log]
  for (let run = 1; made.length < EVENTS; run += 1) {
    for (const [event, data] of [
      ['entered', { value: run % 90, confirmed: false }],
      ['kept', { stamp: null }],
    ] as const) {
      const last = made.at(-1)
      if (last === undefined) throw new Error('nothing begun')
      made.push({
        ...last,
        id: `0192f000-0000-7000-8000-${(made.length + 4096).toString(16).padStart(12, '0')}`,
        body: { kind: `measured.${event}`, step: 'force', place: { run }, ...data } as never,
      })
    }
  }
  return made
}

const TWO = createMachine({
  initial: 'one',
  states: { one: { on: { go: 'two' } }, two: { on: { go: 'one' } } },
})

test('replaying a hundred thousand events', async () => {
  const log = longLog()
  const runner = runnerFor(MANY)
  const { refused } = runner.replay(log)
  if (refused.length > 0) throw new Error(`refused: ${JSON.stringify(refused[0])}`)
  const { ours, baseline } = await turnAbout(
    3,
    () => {
      const begun = performance.now()
      runner.replay(log)
      return performance.now() - begun
    },
    () => {
      const begun = performance.now()
      let [state] = initialTransition(TWO)
      for (const _ of log) [state] = transition(TWO, state, { type: 'go' })
      return performance.now() - begun
    },
  )
  figure(`replay of ${log.length} events / the chart library alone`, ours / baseline, { most: 4 })
})
