/** The checks of tests that are given whole at one desk, for the files that share them out. */
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser } from './browser.ts'
import { type GivenThere, LibraryDesk } from './library-desk.ts'

const figures = (id: string, { presses, entries, seconds }: GivenThere): string =>
  `${id}: ${presses} presses for ${entries} entries, ${seconds.toFixed(0)} s`

/** @param tests ids of the library; `told` hears of each that was given */
export function givenWhole(tests: readonly string[], told: (line: string) => void = () => {}): void {
  let browser: Browser
  let desk: LibraryDesk
  describe('tests of the library given whole, by the keys that the screen names', () => {
    beforeAll(async () => {
      browser = await openBrowser()
      desk = await LibraryDesk.open(browser, tests)
    })
    afterAll(() => browser.close())

    test.each(tests)('%s: what was pressed is what stands, on the screen and in the result', async (id) => {
      told(figures(id, await desk.give(id)))
      expect(desk.problems).toEqual([])
    })

    test('the events on disk, replayed by the protocol kept with them, give the same trials and scores', async () => {
      expect(await desk.close()).toBeGreaterThanOrEqual(tests.length)
    })
  })
}
