/** A made-up test for one hand in which every kind of step comes once, with a window and a rest of two seconds. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const TEXT = `
evenhand: 1
id: every_kind
version: 1.0.0
language: en
title: Every kind
about: { purpose: Shows each kind of step once., minutes: [1, 2], suits: Anybody. }
precautions: [{ id: pain, ask: Does the hand hurt at rest? }]
kit: { board: { text: Board with six pegs, check: All pegs stand firm and the board does not slip. } }
happenings:
  fell: { seen: A ring falls., do: Give it back; the clock runs on., then: tally, key: f, adds: 5 s }
  slow: { seen: The hand slows down., do: Say nothing., then: go-on }
  helped: { seen: The other hand helps., then: void }
  sting: { seen: New or sharp pain., do: Stop., then: stop }
lists: { hands_given: [{ id: once }] }
steps:
  - for-each: pass
    in: hands_given
    steps:
      - { kit: ready, of: [board], text: Board at the midline. }
      - { position: seated, text: Seated at the table with both feet on the floor. }
      - { instruct: explain, text: Put the rings on as fast as you can. }
      - { demonstrate: shown, text: Put two rings on and take them off again. }
      - timed: carry
        text: Watch the last ring.
        start: { said: go }
        stop: { seen: Last ring home. }
        limit: 60 s
        may-say: [Keep going.]
      - { rest: breath, since: carry, least: 2 s, text: Both hands in the lap. }
      - { counted: taps, text: Count the taps., start: { said: go }, window: 2 s, unit: "{count}", range: [0, 90] }
      - { measured: grip, text: Read the dial., unit: kgf, range: [0, 90], decimals: 1 }
scores:
  - { score: time, title: Time, each: pass, value: first(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: tapped, title: Taps, each: pass, value: first(taps.count), unit: "{count}", better: higher, decimals: 0 }
  - { score: held, title: Grip, each: pass, value: first(grip.value), unit: kgf, better: higher, decimals: 1 }
`

/** Puts it into the clinic's own folder. */
export function addEveryKind(records: string): void {
  const folder = join(records, 'protocols', 'every_kind')
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'protocol.yaml'), TEXT)
}
