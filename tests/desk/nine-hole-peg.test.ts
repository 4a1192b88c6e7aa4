import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { keyboardOf, openBrowser, openPage, picture } from './browser.ts'
import { addClient, call, chooseTest, enter, prepare } from './clinic.ts'
import { Giver, resultOf } from './giving.ts'
import { type Host, recordsFolder, startHost } from './host.ts'

const ORLA = {
  name: 'Orla Fenwick',
  born: { day: '3', month: '4', year: '1961' },
  sex: 'Female',
  dominant: 'Right',
  right: 'Not affected',
  left: 'Affected',
} as const
const BUILD = 'Separate square box beside the board'
/** What the key events' own stamps are apart, in seconds: odd on purpose. */
const SPACED = { right: 17.3456, left: 22.0417 } as const

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

async function toTheFirstStep(page: Page): Promise<Giver> {
  await enter(page, 'Ines Vale')
  await addClient(page, ORLA)
  await chooseTest(page, /Nine-hole peg/)
  await prepare(page, BUILD)
  await page.getByText('All of this is right').waitFor()
  const giver = await Giver.of(page)
  await giver.press()
  return giver
}

/** Kit, position, words and demonstration of a hand, then its practice run. */
async function practise(giver: Giver): Promise<void> {
  for (let step = 0; step < 4; step += 1) await giver.press()
  await giver.timed(20.5)
  await giver.press()
}

async function pdfText(page: Page, id: string): Promise<string> {
  const { pdfBase64 } = await call<{ pdfBase64: string }>(page, 'administrations.report', {
    store: 'records',
    id,
  })
  const folder = recordsFolder()
  const file = join(folder.path, 'report.pdf')
  writeFileSync(file, Buffer.from(pdfBase64, 'base64'))
  const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' })
  folder.remove()
  return text
}

describe('the nine-hole peg test, from a cold start to the report', () => {
  test('every time equals the spacing of the key events, and the report carries the same figures', async () => {
    const records = recordsFolder()
    const host = await startHost(records.path)
    const { page, silent } = await openPage(browser, host.url)
    const giver = await toTheFirstStep(page)
    await practise(giver)
    await giver.press()
    await giver.press()
    await picture(page, 'administration')
    await giver.press(SPACED.right)
    await giver.press()
    await practise(giver)
    await giver.timed(SPACED.left)
    await giver.press()
    await page.getByText('Done.').waitFor()
    expect(await page.locator('body').innerText()).not.toMatch(/17\.3|22\.0/)

    const result = await resultOf(page)
    const counted = result.trials.filter((trial) => !trial.practice)
    for (const trial of counted) {
      const spaced = SPACED[trial.place['hand'] as keyof typeof SPACED]
      expect(Math.abs(Number(trial.readings['time']?.value) - spaced)).toBeLessThanOrEqual(0.000_25)
      expect(trial.input).toBe('key')
    }
    expect(counted.map((trial) => trial.place['hand'])).toEqual(['right', 'left'])
    expect(result.trials.filter((trial) => trial.practice)).toHaveLength(2)

    await page.getByRole('button', { name: 'Open the result' }).click()
    await page.getByText('17.3 s').first().waitFor()
    await page.getByText('22.0 s').first().waitFor()
    await picture(page, 'result')
    const text = await pdfText(page, result.administration)
    for (const figure of ['Orla Fenwick', '17.3', '22.0', '20.5', '19.50', '2.30', 'Ines Vale', '1.0.1']) {
      expect(text).toContain(figure)
    }
    expect(silent.problems).toEqual([])
    await host.stop()
    records.remove()
  })

  test('STD-ADM-10: a host killed in the middle of a trial goes on at the same step with nothing lost', async () => {
    const records = recordsFolder()
    let host: Host = await startHost(records.path)
    const first = await openPage(browser, host.url)
    const giver = await toTheFirstStep(first.page)
    await practise(giver)
    await giver.timed(SPACED.right)
    await practise(giver)
    await giver.press()
    await giver.press()
    const before = await resultOf(first.page)
    await host.kill()

    host = await startHost(records.path)
    const { page } = await openPage(browser, host.url)
    await page.getByText('Ines Vale').first().click()
    await page.getByRole('button', { name: 'Go on with this visit' }).click()
    await page.getByRole('button', { name: 'Go on with it' }).click()
    await page.getByText('All of this is right').waitFor()
    const again = await Giver.of(page)
    await again.press()
    expect(await page.locator('main').innerText()).toContain('Left hand')
    const resumed = await resultOf(page)
    const known = new Set(resumed.trials.map((trial) => trial.id))
    expect(before.trials.every((trial) => known.has(trial.id))).toBe(true)
    const cut = resumed.trials.at(-1)
    expect(cut?.status).toBe('void')
    expect(cut?.void?.cause).toBe('restart')
    await host.stop()
    records.remove()
  })

  test('STD-ADM-5: a held key is one press, and keys without a function do nothing', async () => {
    const records = recordsFolder()
    const host = await startHost(records.path)
    const { page } = await openPage(browser, host.url)
    await toTheFirstStep(page)
    const shown = await page.locator('main').innerText()
    const keyboard = await keyboardOf(page)
    for (const idle of ['z', 'y', 'x']) await keyboard.press(idle)
    expect(await page.locator('main').innerText()).toBe(shown)
    await keyboard.hold('Space', 3000)
    const { visit } = await call<{ visit: { administrations: { id: string }[] } }>(page, 'clinic.state', {})
    const { view } = await call<{ view: { progress: { passed: number } } }>(page, 'administrations.view', {
      store: 'records',
      id: visit.administrations[0]?.id ?? '',
    })
    expect(view.progress.passed).toBe(1)
    await host.stop()
    records.remove()
  })
})
