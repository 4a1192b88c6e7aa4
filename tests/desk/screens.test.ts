import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, openPage, picture } from './browser.ts'
import { addClient, call, chooseTest, enter, prepare } from './clinic.ts'
import { Giver, viewOf } from './giving.ts'
import { recordsFolder, startHost } from './host.ts'
import { unworded, violations } from './inspect.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const BUILD = 'Separate square box beside the board'
const DATA = ['Ines Vale', 'Orla Fenwick', 'Board 2', 'Evenhand', 'nine_hole_peg']

/** The same place in the pseudo-locale, in a page of its own beside the one that is used. */
async function bentTwin(page: Page, records: string): Promise<string[]> {
  const twin = await page.context().newPage()
  const { origin, hash } = new URL(page.url())
  await twin.goto(`${origin}/?words=pseudo${hash}`)
  await twin.getByText('⟦').first().waitFor()
  await twin.waitForTimeout(300)
  const left = await unworded(twin, [...DATA, records])
  await twin.close()
  return left
}

async function look(page: Page, name: string, records: string): Promise<void> {
  await page.waitForTimeout(200)
  await picture(page, `screen-${name}`)
  expect(await violations(page), `assistive technology on ${name}`).toEqual([])
  expect(await bentTwin(page, records), `words on ${name}`).toEqual([])
}

describe('every screen can be read by assistive technology and takes its words from the words files', () => {
  test('the screens around a test', async () => {
    const records = recordsFolder()
    const host = await startHost(records.path)
    const { page, silent } = await openPage(browser, host.url)
    await look(page, 'examiner', records.path)
    await enter(page, 'Ines Vale')
    await look(page, 'first', records.path)
    await page.getByRole('button', { name: 'About' }).click()
    await look(page, 'about', records.path)
    await page.getByRole('button', { name: 'Settings' }).click()
    await look(page, 'settings', records.path)
    await page.getByRole('button', { name: 'Evenhand' }).click()
    await page.getByRole('button', { name: 'Add a client' }).click()
    await look(page, 'new-client', records.path)
    await page.getByRole('button', { name: 'Evenhand' }).click()
    await addClient(page, {
      name: 'Orla Fenwick',
      born: { day: '3', month: '4', year: '1961' },
      sex: 'Female',
      dominant: 'Right',
    })
    await look(page, 'client', records.path)
    await page.getByRole('button', { name: 'Choose a test' }).click()
    await look(page, 'choosing', records.path)
    await page.getByRole('button', { name: /Back/ }).click()
    await chooseTest(page, /Nine-hole peg/)
    await look(page, 'starting', records.path)
    expect(silent.problems).toEqual([])
    await host.stop()
    records.remove()
  })

  test('every step of a test, its end and its result', async () => {
    const records = recordsFolder()
    const host = await startHost(records.path)
    const { page } = await openPage(browser, host.url)
    await enter(page, 'Ines Vale')
    await addClient(page, {
      name: 'Orla Fenwick',
      born: { day: '3', month: '4', year: '1961' },
      sex: 'Female',
      dominant: 'Right',
    })
    await chooseTest(page, /Nine-hole peg/)
    await prepare(page, BUILD)
    await page.getByText('All of this is right').waitFor()
    const { origin, hash } = new URL(page.url())
    await page.goto(`${origin}/?words=pseudo${hash}`)
    await page.locator('.main-action').first().waitFor()
    await page.waitForTimeout(300)
    expect(await unworded(page, DATA)).toEqual([])

    const giver = await Giver.of(page)
    await giver.pressNow()
    const found: Record<string, readonly string[]> = {}
    for (let press = 0; press < 60; press += 1) {
      const { phase, step } = await viewOf(page)
      if (phase === 'finished') break
      const at = step === null ? 'end' : `${step.kind} ${step.state}`
      found[at] ??= [...(await unworded(page, DATA)), ...(await violations(page))]
      await giver.press(at === 'timed running' ? 19.5 : 1.2)
    }
    expect(Object.keys(found).length).toBeGreaterThanOrEqual(8)
    expect(Object.entries(found).filter(([, wrong]) => wrong.length > 0)).toEqual([])
    expect(await unworded(page, DATA)).toEqual([])
    const { id } = await viewOf(page)
    await page.goto(`${origin}/?words=pseudo${hash.replace(/giving.*$/, '')}`)
    expect(await call(page, 'administrations.result', { store: 'records', id })).toBeDefined()
    await host.stop()
    records.remove()
  })

  test('with an open visit nobody else’s name comes on screen, and three letters find a client', async () => {
    const records = recordsFolder()
    const host = await startHost(records.path)
    const { page } = await openPage(browser, host.url)
    await enter(page, 'Ines Vale')
    await addClient(page, { name: 'Marit Solberg' })
    await page.getByRole('button', { name: 'End this visit' }).click()
    const search = page.getByLabel('Find a client')
    await search.fill('ma')
    await page.waitForTimeout(400)
    expect(await page.locator('main').innerText()).not.toContain('Marit')
    await search.fill('mar')
    await page.getByText('Marit Solberg').first().waitFor()
    await addClient(page, { name: 'Orla Fenwick' })
    await page.getByRole('button', { name: 'Evenhand' }).click()
    await page.getByText('Orla Fenwick').first().waitFor()
    expect(await page.locator('body').innerText()).not.toContain('Marit')
    await host.stop()
    records.remove()
  })

  test('a rehearsal runs on the same screens and leaves the records alone', async () => {
    const records = recordsFolder()
    const host = await startHost(records.path)
    const { page } = await openPage(browser, host.url)
    await enter(page, 'Ines Vale')
    await page.getByRole('button', { name: 'Rehearse without a client' }).click()
    await page
      .getByRole('button', { name: /Rehearse|Give/ })
      .last()
      .waitFor()
    await picture(page, 'screen-rehearsal')
    expect(await call<unknown[]>(page, 'desk.waiting', {})).toEqual([])
    await host.stop()
    records.remove()
  })
})
