/** What is signalled at the desk: heard or only seen, at the same moments, kept with the trial. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { openBrowser, openPage, picture, type Silent } from './browser.ts'
import { call, enter } from './clinic.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { addProtocol, isIn, Rehearsal } from './rehearsing.ts'

const STEPS = `
steps:
  - { counted: blocks, window: 2 s, half-time: true, start: { said: go }, range: [0, 90] }
scores:
  - { score: moved, title: Blocks, value: max(blocks.count), unit: "{count}", better: higher, decimals: 0 }
`
/** How far a signal may lie from its moment, in ms: a frame or two, or the way through the audio output, under load. */
const NEAR = 400

const records = recordsFolder()
let browser: Browser
let host: Host
let page: Page
let silent: Silent
beforeAll(async () => {
  addProtocol(records.path, 'signals', STEPS)
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
  ;({ page, silent } = await openPage(browser, host.url))
  await enter(page, 'Ines Vale')
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop()])
  records.remove()
})

const signalsIn = ({ trials }: AdministrationView) => trials.at(-1)?.signals ?? []

/** Gives one window on the wall's clock, the page blocked over its half if asked to; gives its signals and start. */
async function giveWindow(block: boolean) {
  const rehearsal = await Rehearsal.open(page, 'signals')
  await page.waitForTimeout(400)
  await rehearsal.giver.pressNow()
  await page.locator('.giving-signal[data-signal=ready]').waitFor()
  await page.waitForTimeout(400)
  await rehearsal.giver.pressNow()
  if (block) {
    await rehearsal.until(isIn('running'))
    await page.evaluate(() => {
      const until = performance.now() + 1000
      while (performance.now() < until);
    })
  } else {
    await page.locator('.giving-signal[data-signal=half]').waitFor()
    await picture(page, 'signal-half')
  }
  const view = await rehearsal.until((now) => signalsIn(now).length >= 4)
  const start = view.trials.at(-1)?.stamps[0] ?? Number.NaN
  return signalsIn(view).map(({ signal, by, at }) => ({ signal, by, after: at - start }))
}

describe('signals of a window of two seconds', () => {
  test('the sound is checked by one key before the first test of the day, can be passed over, and is remembered', async () => {
    await Rehearsal.open(page, 'signals')
    await Rehearsal.prepare(page, 'signals')
    await page.getByText('No sound check on this machine today yet').waitFor()
    await page.keyboard.press('h')
    await page.getByText('They were sounded.').waitFor()
    await Rehearsal.prepare(page, 'signals')
    expect(await page.getByText('sound check').count()).toBe(0)
  })

  test('with sound: what was handed to the audio clock is heard in time though the page is blocked', async () => {
    const signals = await giveWindow(true)
    expect(signals.map(({ signal }) => signal)).toEqual(['ready', 'go', 'half', 'end'])
    expect(signals.map(({ by }) => by)).toEqual(['sound', 'sound', 'sound', 'sound'])
    for (const [index, due] of [0, 1000, 2000].entries())
      expect(Math.abs((signals[index + 1]?.after ?? Number.NaN) - due)).toBeLessThan(NEAR)
  })

  test('silent: each is seen at its moment, in the frame that is kept with the trial', async () => {
    const settings = await call<Record<string, unknown>>(page, 'settings.read', {})
    await call(page, 'settings.change', { ...settings, sound: false })
    await page.evaluate(() => {
      window.location.hash = ''
    })
    await page.reload()
    await page.getByRole('button', { name: 'Add a client' }).waitFor()
    const signals = await giveWindow(false)
    expect(signals.map(({ signal, by }) => `${signal} ${by}`)).toEqual([
      'ready sight',
      'go sight',
      'half sight',
      'end sight',
    ])
    for (const [index, due] of [0, 1000, 2000].entries())
      expect(Math.abs((signals[index + 1]?.after ?? Number.NaN) - due)).toBeLessThan(NEAR)
    expect(silent.problems).toEqual([])
  })
})
