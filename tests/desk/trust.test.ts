/** What could make a time wrong in silence, each tried on the real page: the trial is void, or its time is right. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { keyEvents, openBrowser, openPage, type Silent } from './browser.ts'
import { enter } from './clinic.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { addProtocol, isIn, Rehearsal } from './rehearsing.ts'

const TIMES = `
steps:
  - repeat: run
    times: 40
    steps:
      - { timed: carry, start: { said: go }, stop: { seen: home }, range: [0.1, 1800] }
scores:
  - { score: fastest, title: Fastest, value: min(carry.time), unit: s, better: lower, decimals: 1 }
`
const WINDOWS = `
steps:
  - { counted: blocks, window: 2 s, start: { said: go }, range: [0, 90] }
  - { tapped: taps, window: 2 s, start: { said: go }, bounce: 40 ms }
scores:
  - { score: blocks_moved, title: Blocks, value: max(blocks.count), unit: "{count}", better: higher, decimals: 0 }
  - { score: taps_made, title: Taps, value: max(taps.count), unit: "{count}", better: higher, decimals: 0 }
`
/** How long a process is stopped, in ms. */
const STOPPED = 10_000

const records = recordsFolder()
let browser: Browser
let host: Host
let page: Page
let silent: Silent
beforeAll(async () => {
  addProtocol(records.path, 'times', TIMES)
  addProtocol(records.path, 'windows', WINDOWS)
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
  ;({ page, silent } = await openPage(browser, host.url))
  await enter(page, 'Ines Vale')
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop()])
  records.remove()
})

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms))
const last = ({ trials }: AdministrationView) => trials.at(-1)

/** A rehearsal whose first trial runs. */
async function running(on: Page, key = 'times'): Promise<Rehearsal> {
  const rehearsal = await Rehearsal.open(on, key)
  await rehearsal.giver.pressNow()
  await rehearsal.giver.pressNow()
  expect((await rehearsal.view()).step?.state).toBe('running')
  return rehearsal
}

/** What has become of the trial once it is void: by what, what it holds, and where the next stands. */
async function voidOf(rehearsal: Rehearsal) {
  const view = await rehearsal.until((now) => last(now)?.status === 'void')
  return { cause: last(view)?.void?.cause, readings: last(view)?.readings, next: view.step?.state }
}

const voidBy = (cause: string) => ({ cause, readings: {}, next: 'waiting' })

/** What the page's clock of the wall says from now on, in ms beside the truth. */
const setWallClock = (beside: number): Promise<void> =>
  page.evaluate((ms) => {
    const now = Date.now.bind(Date)
    Date.now = () => now() + ms
  }, beside)

describe('presses that are not meant', () => {
  test('STD-ADM-5: a press 0.15 to 1 s after a stop begins no trial, and other keys during a trial do nothing', async () => {
    const rehearsal = await running(page)
    const { giver } = rehearsal
    for (const idle of ['z', 'y', 'x']) await giver.pressInVain(0.2, idle)
    expect((await rehearsal.view()).step?.state).toBe('running')
    await giver.press(4.4)
    for (const after of [0.16, 0.4, 0.43]) await giver.pressInVain(after)
    const view = await rehearsal.view()
    expect(view.step?.state).toBe('stopped')
    expect(view.trials).toHaveLength(1)
    expect(last(view)?.readings['time']?.value).toBeCloseTo(5, 3)
  })

  test('a stop from another device than the start is refused, and says so', async () => {
    const rehearsal = await running(page)
    await page.locator('.main-action').dispatchEvent('pointerdown', { button: 0, isPrimary: true })
    await page.getByText('Start and stop need the same key').waitFor()
    expect((await rehearsal.view()).step?.state).toBe('running')
    await rehearsal.giver.press(3)
    expect(last(await rehearsal.view())?.status).toBe('running')
    expect(last(await rehearsal.view())?.readings['time']?.value).toBeCloseTo(3, 3)
  })

  test('a main key that nobody lets go is one press, and the screen says that it is stuck', async () => {
    const rehearsal = await Rehearsal.open(page, 'times')
    const session = await page.context().newCDPSession(page)
    const [down] = keyEvents('Space', Date.now() / 1000)
    await session.send('Input.dispatchKeyEvent', { ...down })
    await page.getByText('The main key has been down for some seconds.').waitFor()
    expect((await rehearsal.view()).step?.state).toBe('armed')
    const [, up] = keyEvents('Space', Date.now() / 1000)
    await session.send('Input.dispatchKeyEvent', { ...up })
    await page.getByText('The main key has been down for some seconds.').waitFor({ state: 'detached' })
  })
})

describe('a clock that can’t be trusted', () => {
  test('a wall clock that was set, as after a sleep that the other clock has missed, voids the trial', async () => {
    const rehearsal = await running(page)
    await setWallClock(3_600_000)
    expect(await voidOf(rehearsal)).toEqual(voidBy('clock_changed'))
    await setWallClock(-3_600_000)
  })

  test('a stop that comes before anybody looked at the clocks is no time either, and arms nothing', async () => {
    const rehearsal = await running(page)
    await wait(300)
    await page.evaluate(() => {
      const now = Date.now.bind(Date)
      Date.now = () => now() + 60_000
      document.body.dispatchEvent(new KeyboardEvent('keydown', { code: 'Space', key: ' ', bubbles: true }))
      document.body.dispatchEvent(new KeyboardEvent('keyup', { code: 'Space', key: ' ', bubbles: true }))
    })
    expect(await voidOf(rehearsal)).toEqual(voidBy('clock_changed'))
  })

  test('a lost focus and a hidden window void the trial', async () => {
    const blurred = await running(page)
    await page.evaluate(() => window.dispatchEvent(new Event('blur')))
    expect(await voidOf(blurred)).toEqual(voidBy('focus_lost'))
    const hidden = await running(page)
    await page.evaluate(() => {
      Object.defineProperty(document, 'hidden', { configurable: true, value: true })
      document.dispatchEvent(new Event('visibilitychange'))
      Object.defineProperty(document, 'hidden', { configurable: true, value: false })
    })
    expect(await voidOf(hidden)).toEqual(voidBy('focus_lost'))
  })
})

/** Blocks the page over the end of the window and presses meanwhile: just before the end, and just after it. */
async function pressAroundTheEnd(rehearsal: Rehearsal): Promise<void> {
  const session = await page.context().newCDPSession(page)
  const started = Date.now() / 1000
  await Promise.all(keyEvents('Space', started).map((event) => session.send('Input.dispatchKeyEvent', event)))
  await rehearsal.until(isIn('running'))
  const busy = page.evaluate(() => {
    const until = performance.now() + 2500
    while (performance.now() < until);
  })
  const presses = [1.6, 1.85, 2.15].flatMap((after) => keyEvents('Space', started + after))
  await Promise.all(presses.map((event) => session.send('Input.dispatchKeyEvent', event)))
  await busy
}

describe('windows end on the clock', () => {
  test('with the page blocked over the end, presses before it count and those after it are kept apart', async () => {
    const rehearsal = await Rehearsal.open(page, 'windows')
    await rehearsal.giver.pressNow()
    await wait(800)
    await pressAroundTheEnd(rehearsal)
    const counted = await rehearsal.until((now) => isIn('ended')(now) && (last(now)?.stamps.length ?? 0) >= 3)
    expect(last(counted)?.readings['tapped']?.value).toBe(2)
    expect(last(counted)?.stamps).toHaveLength(3)
    await page.keyboard.type('2')
    await page.keyboard.press('Enter')
    await rehearsal.until(isIn('entered'))
    await wait(500)
    await rehearsal.giver.pressNow()
    await rehearsal.giver.pressNow()
    await wait(800)
    await pressAroundTheEnd(rehearsal)
    const tapped = await rehearsal.until(isIn('ended'))
    expect(last(tapped)?.readings['count']?.value).toBe(2)
    expect(last(tapped)?.readings['after']?.value).toBe(1)
  })
})

describe('processes that are stopped for ten seconds in the middle of a trial', () => {
  let second: { readonly browser: Browser; readonly page: Page }
  beforeEach(async () => {
    const other = await openBrowser()
    second = { browser: other, page: (await openPage(other, host.url)).page }
    await second.page.getByText('Ines Vale').first().click()
    await second.page.getByRole('button', { name: 'Add a client' }).waitFor()
  })

  test('the browser: the trial is void; the host: the time is the spacing of the presses', async () => {
    const stopped = await running(second.page)
    const info = await (await second.browser.newBrowserCDPSession()).send('SystemInfo.getProcessInfo')
    const pids = info.processInfo.map(({ id }) => id)
    for (const pid of pids) process.kill(pid, 'SIGSTOP')
    const waiting = await running(page)
    process.kill(host.pid, 'SIGSTOP')
    const session = await page.context().newCDPSession(page)
    const stamp = Date.now() / 1000
    await wait(STOPPED)
    for (const event of keyEvents('Space', stamp + 40)) await session.send('Input.dispatchKeyEvent', event)
    process.kill(host.pid, 'SIGCONT')
    const timed = await waiting.until(isIn('stopped'))
    expect(last(timed)?.status).toBe('running')
    expect(last(timed)?.readings['time']?.value).toBeGreaterThan(30)
    for (const pid of pids) process.kill(pid, 'SIGCONT')
    expect(await voidOf(stopped)).toEqual(voidBy('suspended'))
    await second.browser.close()
    expect(silent.problems).toEqual([])
  })
})
