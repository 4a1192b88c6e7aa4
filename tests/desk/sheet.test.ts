/** A page of twenty-six readings, given by keys alone. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { openBrowser, openPage, picture } from './browser.ts'
import { addClient, chooseTest, enter, prepare } from './clinic.ts'
import { Giver, giveUntil, viewOf } from './giving.ts'
import { recordsFolder, startHost } from './host.ts'
import { violations } from './inspect.ts'

const MOTIONS = [
  'Shoulder flexion',
  'Shoulder extension',
  'Shoulder abduction',
  'Elbow flexion',
  'Elbow extension',
  'Forearm turned down',
  'Forearm turned up',
  'Wrist flexion',
  'Wrist extension',
  'Wrist to the thumb',
  'Wrist to the little finger',
  'Thumb end joint',
  'Thumb base joint',
]
const items = MOTIONS.map((title, n) => `{ id: m${n}, title: ${title}, say: "${title}, as far as it goes." }`)

const TEXT = `
evenhand: 1
id: page_of_angles
version: 1.0.0
language: en
title: Page of angles
about: { purpose: Fills in a page., minutes: [1, 2], suits: Anybody. }
precautions: [{ id: pain, ask: Does the hand hurt at rest? }]
kit: { goniometer: { text: Goniometer, check: The arms are straight. } }
lists: { motions: [${items.join(', ')}] }
steps:
  - { kit: ready, of: [goniometer], text: Goniometer at hand. }
  - { position: seated, text: Seated. }
  - { instruct: explain, text: Move as far as you can. }
  - for-each: motion
    in: motions
    sheet: true
    steps:
      - for-each: hand
        in: hands
        steps:
          - { measured: angle, text: { from: motion.say }, unit: deg, range: [-30, 180], decimals: 0 }
scores:
  - { score: all, title: All, value: sum(given(angle.value)), unit: deg, better: higher, decimals: 0 }
`

test('twenty-six readings take their digits and Enter, no more; what is left open is asked for once', async () => {
  const browser = await openBrowser()
  const records = recordsFolder()
  const folder = join(records.path, 'protocols', 'page_of_angles')
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'protocol.yaml'), TEXT)
  const host = await startHost(records.path)
  const { page, silent } = await openPage(browser, host.url)
  page.setDefaultTimeout(6000)
  await enter(page, 'Ines Vale')
  await addClient(page, { name: 'Orla Fenwick', dominant: 'Right' })
  await chooseTest(page, /Page of angles/)
  await prepare(page, 'none')
  await page.getByText('All of this is right').waitFor()
  const giver = await Giver.of(page)
  await giveUntil(
    page,
    giver,
    () => 0,
    ({ sheet }) => sheet !== null,
  )
  await page.getByText('0 of 26 given').waitFor()
  await picture(page, 'sheet-blank')
  expect(await violations(page)).toEqual([])

  let keys = 0
  const type = async (typed: string): Promise<void> => {
    for (const key of [...typed, 'Enter']) {
      await page.keyboard.press(key)
      keys += 1
    }
  }
  // 24 readings of three digits; nobody waits for a save between them.
  for (let n = 0; n < 24; n += 1) await type(String(100 + n))
  expect(keys).toBe(24 * 4)
  await page.getByText('24 of 26 given').waitFor()
  const boxes = page.getByRole('table').getByRole('textbox')
  expect(await boxes.evaluateAll((all) => all.map((box) => (box as HTMLInputElement).value))).toEqual([
    ...Array.from({ length: 24 }, (_, n) => String(100 + n)),
    '',
    '',
  ])
  // Hardly plausible: typing stays there until it is entered once more.
  await type('-90')
  await page.getByText('−30 to 180').waitFor()
  await page.keyboard.press('Enter')
  await page.getByText('25 of 26 given').waitFor()
  await page.keyboard.press('c')
  await page.getByRole('dialog').waitFor()
  await picture(page, 'sheet-gap')
  expect(await violations(page)).toEqual([])
  await page.getByRole('radio', { name: /^Thumb base joint/ }).focus()
  await page.keyboard.press('Space')
  await page.keyboard.press('Tab')
  await page.keyboard.press('ArrowDown')
  await page.getByRole('button', { name: 'Close it' }).press('Enter')
  await page.getByText('26 of 26 given').waitFor()
  await picture(page, 'sheet-full')
  await page.getByRole('button', { name: 'Done with this page' }).press('Enter')
  await page.getByRole('button', { name: 'Finish the test' }).waitFor()
  const { trials } = await viewOf(page)
  expect(trials).toHaveLength(26)
  expect(trials.at(-2)?.readings.value).toMatchObject({ value: -90, confirmed: true })
  expect(silent.problems).toEqual([])
  await host.stop()
  records.remove()
  await browser.close()
})
