/** Numbers that are none, clients of whom little is known, and stops for the client's sake, at the desk. */
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, picture } from './browser.ts'
import { addClient, chooseTest, enter, prepare } from './clinic.ts'
import { Giver, giveUntil, resultOf, viewOf } from './giving.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { at, Screen } from './screen.ts'
import { addShortCopies } from './windows.ts'

const BUILD = 'Separate square box beside the board'

const records = recordsFolder()
let browser: Browser
let host: Host
/** The page that the tests of this file go on with, one after another. */
let screen: Screen
beforeAll(async () => {
  addShortCopies(records.path)
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
  screen = await Screen.open(browser, host.url)
  await enter(screen.page, 'Ines Vale')
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop()])
  records.remove()
})

describe('a client of whom little is known, and numbers that are none', () => {
  test('a birth date to come is said in place, and nothing that was typed is lost', async () => {
    const { page } = screen
    await screen.button('Add a client').click()
    await page.getByLabel('Name').fill('Teodor Lindqvist')
    const birth = (part: string) => page.getByLabel(part, { exact: true }).first()
    for (const [day, month, year, said] of [
      ['1', '1', '2099', 'This day has not come yet.'],
      ['31', '2', '1970', 'This month has no such day.'],
      ['first', '1', '1970', 'need digits only'],
    ] as const) {
      await birth('Day').fill(day)
      await birth('Month').fill(month)
      await birth('Year').fill(year)
      await screen.button('Save and begin the visit').click()
      await page.getByText(said).first().waitFor()
      await picture(page, `awkward-birth-${year}-${day}`)
      expect(await page.getByLabel('Name').inputValue()).toBe('Teodor Lindqvist')
    }
    for (const part of ['Day', 'Month', 'Year']) await birth(part).fill('')
    await page
      .getByRole('radiogroup', { name: /^Right arm/ })
      .getByText('Hand or arm absent', { exact: true })
      .click()
    await screen.button('Save and begin the visit').click()
    await page.getByRole('button', { name: 'Choose a test' }).waitFor()
  })

  test('a grip with the right arm absent: text is no reading, 900 is asked for again, and nothing becomes zero', async () => {
    const { page } = screen
    await chooseTest(page, /Short copy of Grip/)
    await prepare(page, 'Hydraulic dynamometer', ['Second handle position', 'Seated, elbow at a right angle'])
    await page.getByText('All of this is right').waitFor()
    await picture(page, 'awkward-absent')
    const giver = await Giver.of(page)
    await giver.pressNow()
    await giveUntil(page, giver, () => 12, at('squeeze', 'waiting', 'left'))
    const box = page.getByLabel('What does the instrument show?')
    for (const [typed, said] of [
      ['thirty', 'This needs a number'],
      ['3o', 'This needs a number'],
      ['', 'Type a number first'],
      ['31.25', 'one decimal'],
      ['900', 'lies outside what is plausible'],
      ['901', 'lies outside what is plausible'],
    ] as const) {
      await box.fill(typed)
      await page.keyboard.press('Enter')
      expect(await screen.canBeRead(said)).toBe(true)
      expect(await viewOf(page)).toSatisfy(at('squeeze', 'waiting', 'left'))
    }
    await picture(page, 'awkward-doubted')
    await page.keyboard.press('Enter')
    await expect.poll(async () => (await viewOf(page)).step?.state).toBe('entered')
    await giveUntil(
      page,
      giver,
      () => 30,
      ({ phase }) => phase === 'finished',
    )
    await screen.button('Open the result').click()
    await page.getByText('Every trial').first().waitFor()
    const { scores, trials, administration } = await resultOf(page)
    const mean = (hand: string) =>
      scores.find((one) => one.score === 'mean_of_3' && one.place['hand'] === hand)
    expect(mean('left')?.value).toBeCloseTo((901 + 30 + 30) / 3, 9)
    expect(mean('left')?.otherHand?.withheld?.code).toBe('other_absent')
    expect([mean('right')?.value, mean('right')?.missing?.code]).toEqual([null, 'absent'])
    expect(
      trials.filter(({ place }) => place['hand'] === 'right').every(({ outcome }) => outcome === 'absent'),
    ).toBe(true)
    const [shown, paper] = [await screen.shown(), await screen.printed(administration)]
    for (const words of [
      'No value: part absent.',
      'No comparison: the other hand is absent.',
      'The age is not known.',
    ])
      expect(shown).toContain(words)
    for (const words of [
      'part absent',
      'the other hand is absent',
      'The age is not known.',
      '901 kgf, typed by hand, confirmed',
    ])
      expect(paper).toContain(words)
  })
})

describe('stopped for the client’s sake by one key in mid-trial: the reason comes after', () => {
  test('a hand ends and the other goes on; then the test ends; then the whole visit', async () => {
    const { page } = screen
    await page.goto(new URL('/', page.url()).href)
    const open = screen.button('End this visit')
    await open.or(screen.button('Add a client')).first().waitFor()
    if (await open.isVisible()) await open.click()
    await addClient(page, {
      name: 'Maia Brandt',
      left: 'Affected, but less than the other',
      right: 'Affected',
    })
    const begin = async (): Promise<Giver> => {
      await chooseTest(page, /Nine-hole peg/)
      await prepare(page, BUILD)
      await page.getByText('All of this is right').waitFor()
      await page.getByText('Left (less affected hand first)').waitFor()
      const giver = await Giver.of(page)
      await giver.pressNow()
      return giver
    }
    let giver = await begin()
    await giveUntil(page, giver, () => 25, at('run', 'running', 'left'))
    await giver.press(5, 'Escape')
    await screen.settle('This hand', 'Tingling in two fingers.', '3')
    expect((await viewOf(page)).step?.place).toEqual({ hand: 'right' })
    await giver.press()
    await giveUntil(page, giver, () => 25, at('run', 'running', 'right'))
    await giver.press(5, 'Escape')
    await screen.settle('This test', 'Giddy.', 'Not asked')
    await giver.press()
    await picture(page, 'awkward-test-ended')
    await giveUntil(
      page,
      giver,
      () => 25,
      ({ phase }) => phase === 'finished',
    )
    const first = await resultOf(page)
    expect(first.scores.filter(({ score }) => score === 'time').map(({ missing }) => missing?.code)).toEqual([
      'stopped',
      'stopped',
    ])
    await screen.button('Open the result').click()
    await page.getByText('Every trial').first().waitFor()
    expect(await screen.shown()).toContain('Tingling in two fingers.')

    await page.getByRole('button', { name: /^Back/ }).click()
    await page.getByText('None in these records.').waitFor()
    giver = await begin()
    await giveUntil(page, giver, () => 25, at('try_out', 'running', 'left'))
    await giver.press(5, 'Escape')
    await screen.settle('The whole visit', 'Unwell.', '2')
    await giver.press()
    await page.getByText('The visit is ended.').waitFor()
    await page.getByRole('button', { name: /^To the first screen/ }).click()
    await screen.button('Add a client').waitFor()
  })
})
