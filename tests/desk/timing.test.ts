import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, openPage, type Silent } from './browser.ts'
import { enter } from './clinic.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { blockMainThread, compareClocks, givePairs, loadMachine, percentile, STEPS } from './pairs.ts'
import { addProtocol } from './rehearsing.ts'

/** The hundredth of what `npm run long -- timing` gives. */
const PAIRS = 20
const SEED = 20_260_302

const records = recordsFolder()
const load = loadMachine(records.path, 1)
let browser: Browser
let host: Host
let page: Page
let silent: Silent
beforeAll(async () => {
  addProtocol(records.path, 'pairs', STEPS)
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
  ;({ page, silent } = await openPage(browser, host.url))
  await enter(page, 'Ines Vale')
  await blockMainThread(page, SEED)
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop(), load.end()])
  records.remove()
})

describe('times on a page whose main thread is blocked at random, with the processor and the disk under load', () => {
  test('every time is the spacing that was sent, to a tenth of a millisecond', async () => {
    const { errors } = await givePairs(page, 'pairs', PAIRS, SEED)
    expect(errors).toHaveLength(PAIRS)
    expect(Math.max(...errors)).toBeLessThanOrEqual(0.1)
    expect(silent.problems).toEqual([])
  })

  test('a clock read in the handler would be worse by orders of magnitude', async () => {
    const { byStamp, byHandler } = await compareClocks(page, 15, SEED)
    expect(Math.max(...byStamp)).toBeLessThanOrEqual(0.1)
    expect(percentile(byHandler, 0.5) / Math.max(...byStamp)).toBeGreaterThan(100)
  })

  test('the page is isolated, which gives its clock the finest step', async () => {
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true)
  })
})
