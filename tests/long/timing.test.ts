/**
 * The clock on a machine made slow, at full length: 2,000 start–stop pairs with stamps of their own through the devtools
 * protocol, and as many spacings by real key events of an X server. `npm run long -- timing`, about half an hour.
 */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { randomFrom } from '../../protocols/random.ts'
import { openBrowser, openPage } from '../desk/browser.ts'
import { enter } from '../desk/clinic.ts'
import { type Host, recordsFolder, startHost } from '../desk/host.ts'
import {
  blockMainThread,
  compareClocks,
  givePairs,
  loadMachine,
  percentile,
  STEPS,
  TRIALS,
} from '../desk/pairs.ts'
import { addProtocol, isIn, Rehearsal } from '../desk/rehearsing.ts'
import { type Handed, KEYCODES, XKeyboard } from './x-keyboard.ts'
import { startXServer } from './x-server.ts'

const PAIRS = 2000
const X_TRIALS = 200
const X_SPACINGS = 1800
const SEED = 20_260_302

const WINDOW = `
steps:
  - repeat: run
    times: 40
    steps:
      - { tapped: taps, window: 30 s, bounce: 40 ms }
scores:
  - { score: most, title: Most, value: max(taps.count), unit: "{count}", better: higher, decimals: 0 }
`

const records = recordsFolder()
const load = loadMachine(records.path, 2)
let host: Host
beforeAll(async () => {
  addProtocol(records.path, 'pairs', STEPS)
  addProtocol(records.path, 'windows', WINDOW)
  host = await startHost(records.path)
})
afterAll(async () => {
  await Promise.all([host.stop(), load.end()])
  records.remove()
})

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms))
const inMs = (value: number): string => `${value.toFixed(4)} ms`

/** ms by which a spacing lies outside of what the sender can vouch for, and by which it misses the middle of that. */
function missOf(
  spacing: number,
  from: Handed,
  to: Handed,
): { readonly beyond: number; readonly plain: number } {
  const least = to.before - from.after
  const most = to.after - from.before
  return {
    beyond: Math.max(0, least - spacing, spacing - most),
    plain: Math.abs(spacing - (to.before - from.before)),
  }
}

test('2,000 pairs through the devtools protocol: none is off by more than a tenth of a millisecond', async () => {
  const browser = await openBrowser()
  const { page, silent } = await openPage(browser, host.url)
  await enter(page, 'Ines Vale')
  await blockMainThread(page, SEED)
  const { errors } = await givePairs(page, 'pairs', PAIRS, SEED)
  const { byStamp, byHandler } = await compareClocks(page, 400, SEED)
  const ratio = percentile(byHandler, 0.5) / Math.max(...byStamp)
  console.log(`${errors.length} pairs: largest error ${inMs(Math.max(...errors))}`)
  console.log(
    `400 presses in real time: by stamp at most ${inMs(Math.max(...byStamp))}; read in the handler, median ` +
      `${inMs(percentile(byHandler, 0.5))}, 99th percentile ${inMs(percentile(byHandler, 0.99))}: ${ratio.toFixed(0)} times`,
  )
  expect(errors).toHaveLength(PAIRS)
  expect(Math.max(...errors)).toBeLessThanOrEqual(0.1)
  expect(ratio).toBeGreaterThan(100)
  expect(silent.problems).toEqual([])
  await browser.close()
})

/** Start–stop trials by real keys, in real time. */
async function pairsByX(page: Page, keyboard: XKeyboard, random: () => number) {
  const misses: { readonly beyond: number; readonly plain: number }[] = []
  while (misses.length < X_TRIALS) {
    const rehearsal = await Rehearsal.open(page, 'pairs')
    await wait(1200)
    for (let run = 1; run <= TRIALS; run += 1) {
      // A press sooner after the last one is its bounce.
      await wait(300)
      await keyboard.press(KEYCODES.Space)
      await rehearsal.until(isIn('armed'))
      await wait(300)
      const start = await keyboard.press(KEYCODES.Space)
      await wait(300 + random() * 800)
      const stop = await keyboard.press(KEYCODES.Space)
      await rehearsal.until(isIn('stopped'))
      // The key is dead for a second after the stop, by stamps that this process doesn't know to the millisecond.
      await wait(1300)
      await keyboard.press(KEYCODES.Space)
      const { trials } = await rehearsal.until(
        (view) => view.trials.filter(({ status }) => status === 'standing').length >= run,
      )
      const time = Number(trials[run - 1]?.readings['time']?.value) * 1000
      misses.push(missOf(time, start, stop))
    }
  }
  return misses
}

/** Taps within windows by real keys, in real time: each spacing of two that follow one another. */
async function spacingsByX(page: Page, keyboard: XKeyboard, random: () => number) {
  const misses: { readonly beyond: number; readonly plain: number }[] = []
  const rehearsal = await Rehearsal.open(page, 'windows')
  for (let run = 0; misses.length < X_SPACINGS; run += 1) {
    await wait(1200)
    await keyboard.press(KEYCODES.Space)
    await rehearsal.until(isIn('armed'))
    await wait(300)
    const handed: Handed[] = []
    const until = performance.now() + 29_000
    while (performance.now() < until) {
      handed.push(await keyboard.press(KEYCODES.Space))
      await wait(110 + random() * 140)
    }
    await rehearsal.until(isIn('ended'))
    const stamps = (await rehearsal.view()).trials[run]?.stamps ?? []
    expect(stamps).toHaveLength(handed.length)
    for (const [index, to] of handed.entries()) {
      const from = handed[index - 1]
      if (from !== undefined) misses.push(missOf((stamps[index] ?? 0) - (stamps[index - 1] ?? 0), from, to))
    }
    await wait(1200)
    await keyboard.press(KEYCODES.Space)
    await rehearsal.until(isIn('waiting'))
  }
  return misses
}

test('real key events of an X server: the error beyond the sender’s own jitter is at most 5 ms in 99 of 100', async () => {
  const server = await startXServer()
  const browser = await openBrowser(server.display)
  const { page, silent } = await openPage(browser, host.url)
  await enter(page, 'Bo Lindgren')
  const keyboard = await XKeyboard.open(server.display)
  await keyboard.focus()
  await blockMainThread(page, SEED)
  const random = randomFrom(SEED)
  const tell = (what: string, misses: Awaited<ReturnType<typeof pairsByX>>): void =>
    console.log(
      `${misses.length} ${what}: 99th percentile beyond the jitter ` +
        `${inMs(
          percentile(
            misses.map(({ beyond }) => beyond),
            0.99,
          ),
        )}, against the moment of sending ` +
        `${inMs(
          percentile(
            misses.map(({ plain }) => plain),
            0.99,
          ),
        )}`,
    )
  const pairs = await pairsByX(page, keyboard, random)
  tell('start–stop pairs by X', pairs)
  const spacings = await spacingsByX(page, keyboard, random)
  tell('spacings of taps by X', spacings)
  const beyond = [...pairs, ...spacings].map((miss) => miss.beyond)
  expect(beyond.length).toBeGreaterThanOrEqual(2000)
  expect(percentile(beyond, 0.99)).toBeLessThanOrEqual(5)
  expect(silent.problems).toEqual([])
  keyboard.close()
  await browser.close()
  await server.stop()
})
