import { expect, test } from 'vitest'
import { openBrowser, openPage } from './browser.ts'
import { addClient, chooseTest, enter } from './clinic.ts'
import { recordsFolder, startHost } from './host.ts'

test('what is asked before a test is answered by one key a question, which is a letter anywhere else', async () => {
  const browser = await openBrowser()
  const records = recordsFolder()
  const host = await startHost(records.path)
  const { page, silent } = await openPage(browser, host.url)
  await enter(page, 'Ines Vale')
  await addClient(page, { name: 'Orla Fenwick' })
  await chooseTest(page, /Nine-hole peg/)

  // On the heading, where reading begins, a number answers nothing.
  await page.keyboard.press('1')
  expect(await page.getByRole('radio', { name: 'Not present', checked: true }).count()).toBe(0)
  const questions = await page.getByRole('radiogroup').filter({ hasText: 'Not present' }).count()
  await page.keyboard.press('Tab')
  await page.keyboard.press('2')
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('type'))).toBe('text')
  await page.keyboard.type('Dr 3')
  expect(await page.getByLabel('Cleared by').inputValue()).toBe('Dr 3')
  for (let tabs = 0; tabs < 4; tabs += 1) await page.keyboard.press('Tab')
  for (let answered = 1; answered < questions; answered += 1) {
    const focused = page.getByRole('radiogroup').nth(answered)
    await expect.poll(() => focused.evaluate((group) => group.contains(document.activeElement))).toBe(true)
    await page.keyboard.press('1')
  }
  const pain = page.getByRole('radiogroup', { name: /^Pain now/ })
  await expect.poll(() => pain.evaluate((group) => group.contains(document.activeElement))).toBe(true)
  await page.keyboard.press('4')
  expect(await pain.getByRole('radio', { checked: true }).getAttribute('value')).toBe('4')
  expect(await page.getByRole('radio', { name: 'Not present', checked: true }).count()).toBe(questions - 1)
  expect(await page.getByRole('radio', { name: 'Present, cleared', checked: true }).count()).toBe(1)
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT')

  expect(silent.problems).toEqual([])
  await host.stop()
  records.remove()
  await browser.close()
})
