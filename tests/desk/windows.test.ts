import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, openPage, picture } from './browser.ts'
import { recordsFolder, startHost } from './host.ts'
import { addShortCopies, beginVisit, giveBlocks, giveGrip, scoreOf } from './windows.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

describe('counted windows and readings at the desk, with copies whose windows last three seconds', () => {
  test('box and block, then grip in the same visit: values, dominant hand first, windows to the clock', async () => {
    const records = recordsFolder()
    addShortCopies(records.path)
    const host = await startHost(records.path)
    const { page, silent } = await openPage(browser, host.url)
    await beginVisit(page)

    const blocks = await giveBlocks(page, /Short copy of Box/)
    expect([scoreOf(blocks, 'blocks', 'left'), scoreOf(blocks, 'blocks', 'right')]).toEqual([61, 58])
    const counted = blocks.trials.filter((trial) => !trial.practice)
    expect(counted.map((trial) => trial.place['hand'])).toEqual(['left', 'right'])
    for (const { stamps } of counted)
      expect((stamps.at(-1) ?? 0) - (stamps[0] ?? 0)).toBeGreaterThanOrEqual(3000)

    await page.getByRole('button', { name: 'Back to the visit' }).click()
    const grip = await giveGrip(page, /Short copy of Grip/)
    expect(scoreOf(grip, 'mean_of_3', 'right')).toBeCloseTo((31 + 32.5 + 30.5) / 3, 12)
    expect(scoreOf(grip, 'mean_of_3', 'left')).toBeCloseTo(35, 12)
    expect([scoreOf(grip, 'highest_of_3', 'left'), scoreOf(grip, 'highest_of_3', 'right')]).toEqual([
      36, 32.5,
    ])
    expect(grip.trials.filter((trial) => !trial.practice)).toHaveLength(6)
    await picture(page, 'done')
    expect(silent.problems).toEqual([])
    await host.stop()
    records.remove()
  })
})
