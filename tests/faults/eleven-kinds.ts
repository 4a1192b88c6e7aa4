/** A made-up test in which every kind of step comes once. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const TEXT = `
evenhand: 1
id: eleven_kinds
version: 1.0.0
language: en
title: Eleven kinds
about: { purpose: Has each kind of step once., minutes: [1, 2], suits: Anybody. }
kit: { board: { text: Board with six pegs, check: All pegs stand firm. } }
steps:
  - { kit: ready, of: [board], text: Board at the midline. }
  - { position: seated, text: Seated at the table with both feet on the floor. }
  - { instruct: explain, text: Put the rings on as fast as you can. }
  - { demonstrate: shown, text: Put two rings on and take them off again. }
  - { ask: rested, text: Is the hand rested?, options: { yes: Rested, no: Tired } }
  - { timed: carry, text: Watch the last ring., start: { said: go }, stop: { seen: Last ring home. }, limit: 60 s, voids: 2 }
  - { rated: quality, of: carry, scale: { 0: None, 1: Part, 2: Whole } }
  - { rest: breath, since: carry, least: 2 s, text: Both hands in the lap. }
  - { counted: rings, text: Count the rings., start: { said: go }, window: 2 s, unit: "{count}", range: [0, 90] }
  - { tapped: taps, text: As fast as you can., start: { said: go }, window: 2 s }
  - { measured: grip, text: Read the dial., unit: kgf, range: [0, 90], decimals: 1 }
scores:
  - { score: time, title: Time, value: first(carry.time), unit: s, better: lower, decimals: 1 }
  - { score: grade, title: Grade, value: first(quality.grade), unit: "{score}", better: higher, decimals: 0 }
  - { score: counted, title: Rings, value: first(rings.count), unit: "{count}", better: higher, decimals: 0 }
  - { score: tapped, title: Taps, value: first(taps.count), unit: "{count}", better: higher, decimals: 0 }
  - { score: held, title: Grip, value: first(grip.value), unit: kgf, better: higher, decimals: 1 }
`

/** Puts it into the clinic's own folder. @returns the test as `giveByWire` takes it */
export function addElevenKinds(records: string) {
  const folder = join(records, 'protocols', 'eleven_kinds')
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'protocol.yaml'), TEXT)
  return { from: 'clinic', key: 'eleven_kinds', folder } as const
}
