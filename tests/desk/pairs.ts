/**
 * Start–stop pairs of known spacing, given as trials on the real page while the machine is made slow: what the program
 * takes for a time is held against what was sent. A seeded share runs in CI, the whole by `npm run long -- timing`.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import type { CDPSession, Page } from 'playwright-core'
import { randomFrom } from '../../protocols/random.ts'
import { keyEvents } from './browser.ts'
import { Rehearsal } from './rehearsing.ts'

/** Trials in one rehearsal: its view holds all of them, and is sent with every answer. */
export const TRIALS = 40

export const STEPS = `
steps:
  - repeat: run
    times: ${TRIALS}
    steps:
      - { timed: carry, start: { said: go }, stop: { seen: home }, range: [0.1, 1800] }
scores:
  - { score: fastest, title: Fastest, value: min(carry.time), unit: s, better: lower, decimals: 1 }
`

const BUSY = 'for (;;) Math.sqrt(Math.random())'
const SYNCING = `
const { openSync, writeSync, fsyncSync } = require('node:fs')
const file = openSync(process.argv[1], 'w')
const block = Buffer.alloc(4_000_000, 1)
for (;;) { writeSync(file, block, 0, block.length, 0); fsyncSync(file) }
`

const begin = (code: string, ...args: string[]): ChildProcess =>
  spawn(process.execPath, ['-e', code, ...args], { stdio: 'ignore' })

/** So many processes that take all the processor they get, and one that keeps the records' disk writing and syncing. */
export function loadMachine(folder: string, busy: number): { end(): Promise<void> } {
  const children = [...Array.from({ length: busy }, () => begin(BUSY)), begin(SYNCING, `${folder}/busy`)]
  return {
    end: async () => {
      for (const child of children) {
        const ended = once(child, 'exit')
        child.kill('SIGKILL')
        await ended
      }
    },
  }
}

/** Blocks the page's main thread again and again, each time for up to half a second. */
export async function blockMainThread(page: Page, seed: number): Promise<void> {
  await page.evaluate((from) => {
    let state = from
    const random = (): number => {
      state = (state * 1_103_515_245 + 12_345) % 2 ** 31
      return state / 2 ** 31
    }
    const block = (): void => {
      const until = performance.now() + random() * 500
      while (performance.now() < until);
      setTimeout(block, random() * 700)
    }
    block()
  }, seed)
}

export interface Errors {
  /** ms by which each time differs from the spacing that was sent, without sign. */
  readonly errors: readonly number[]
}

/** Gives one trial: four presses sent at once, each with a stamp of its own. Gives back when the last was, in s. */
async function giveTrial(session: CDPSession, from: number, spacing: number): Promise<number> {
  const start = from + 2.6
  const moments = [from + 1.3, start, start + spacing, start + spacing + 1.3]
  await Promise.all(
    moments
      .flatMap((moment) => keyEvents('Space', moment))
      .map((event) => session.send('Input.dispatchKeyEvent', event)),
  )
  return start + spacing + 1.3
}

/** Gives so many trials, spaced from 0.2 to 8 s by their stamps. The page's examiner is known. */
export async function givePairs(page: Page, key: string, count: number, seed: number): Promise<Errors> {
  const random = randomFrom(seed)
  const session = await page.context().newCDPSession(page)
  const errors: number[] = []
  while (errors.length < count) {
    const rehearsal = await Rehearsal.open(page, key)
    const here = Math.min(TRIALS, count - errors.length)
    const spacings: number[] = []
    let at = Date.now() / 1000
    for (let run = 1; run <= here; run += 1) {
      const spacing = 0.2 + random() * 7.8
      spacings.push(spacing)
      at = await giveTrial(session, at, spacing)
      await rehearsal.until(
        ({ trials }) => trials.filter(({ status }) => status === 'standing').length >= run,
      )
    }
    const { trials } = await rehearsal.view()
    for (const [index, spacing] of spacings.entries()) {
      const time = trials[index]?.readings['time']?.value
      if (typeof time !== 'number')
        throw new Error(`trial ${index + 1} has no time: ${JSON.stringify(trials[index])}`)
      errors.push(Math.abs(time - spacing) * 1000)
    }
  }
  return { errors }
}

/** Presses of an idle key in real time: what their stamps say and what a clock read in the handler would have said. */
export async function compareClocks(
  page: Page,
  count: number,
  seed: number,
): Promise<{ readonly byStamp: readonly number[]; readonly byHandler: readonly number[] }> {
  const random = randomFrom(seed)
  const session = await page.context().newCDPSession(page)
  await page.evaluate(() => {
    const seen: (readonly [number, number])[] = []
    Object.assign(window, { seen })
    addEventListener('keydown', (event) => seen.push([event.timeStamp, performance.now()]), true)
  })
  const sent: number[] = []
  const answers: Promise<unknown>[] = []
  for (let press = 0; press <= count; press += 1) {
    const moment = (performance.timeOrigin + performance.now()) / 1000
    sent.push(moment)
    answers.push(...keyEvents('z', moment).map((event) => session.send('Input.dispatchKeyEvent', event)))
    await new Promise((done) => setTimeout(done, 100 + random() * 300))
  }
  await Promise.all(answers)
  const seen = await page.evaluate(() => (window as unknown as { seen: [number, number][] }).seen)
  const errorsOf = (which: 0 | 1): number[] =>
    sent.slice(1).map((moment, index) => {
      const passed = (seen[index + 1]?.[which] ?? Number.NaN) - (seen[index]?.[which] ?? Number.NaN)
      return Math.abs(passed - (moment - (sent[index] ?? Number.NaN)) * 1000)
    })
  return { byStamp: errorsOf(0), byHandler: errorsOf(1) }
}

/** The value below which so much of all values lies, by nearest rank. */
export function percentile(values: readonly number[], part: number): number {
  const sorted = values.toSorted((one, other) => one - other)
  return sorted[Math.max(0, Math.ceil(part * sorted.length) - 1)] ?? Number.NaN
}
