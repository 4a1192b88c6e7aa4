/** The real windows and rests, a minute a hand and fifteen seconds between squeezes: `npm run long -- windows`. */
import { expect, test } from 'vitest'
import { openBrowser, openPage } from '../desk/browser.ts'
import { recordsFolder, startHost } from '../desk/host.ts'
import { beginVisit, giveBlocks, giveGrip, scoreOf } from '../desk/windows.ts'

test('box and block and grip with their real windows and rests', async () => {
  const browser = await openBrowser()
  const records = recordsFolder()
  const host = await startHost(records.path)
  const { page, silent } = await openPage(browser, host.url)
  page.setDefaultTimeout(90_000)
  await beginVisit(page)

  const blocks = await giveBlocks(page, /^Box and block/)
  const counted = blocks.trials.filter((trial) => !trial.practice)
  const windows = counted.map(({ stamps }) => ((stamps.at(-1) ?? 0) - (stamps[0] ?? 0)) / 1000)
  console.log(`windows of 60 s by their stamps: ${windows.map((seconds) => seconds.toFixed(3)).join(', ')} s`)
  expect(scoreOf(blocks, 'blocks', 'left')).toBe(61)
  for (const seconds of windows) expect(seconds).toBeGreaterThanOrEqual(60)

  await page.getByRole('button', { name: 'Back to the visit' }).click()
  const grip = await giveGrip(page, /^Grip strength/)
  expect(scoreOf(grip, 'highest_of_3', 'left')).toBe(36)
  expect(silent.problems).toEqual([])
  await host.stop()
  records.remove()
  await browser.close()
})
