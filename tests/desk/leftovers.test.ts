/** An order that the examiner chooses, what a correction shows to be missing, and grades of another day, at the desk. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser, picture } from './browser.ts'
import { addClient, chooseTest, enter, prepare } from './clinic.ts'
import { Giver, giveUntil, resultOf, viewOf } from './giving.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { Screen } from './screen.ts'

const PROTOCOL = `
evenhand: 1
id: our_parts
version: 1.0.0
language: en
title: Parts of ours
about:
  purpose: To try what is left to choose and to give.
  measures: [d440]
  minutes: [1, 2]
  suits: Nobody.
lists: { parts: [{ id: near }, { id: middle }, { id: far }] }
steps:
  - for-each: hand
    in: hands
    order: chosen
    steps:
      - for-each: part
        in: parts
        steps:
          - { measured: grade, unit: "{score}", range: [0, 3], decimals: 0 }
          - { rule: all_parts, when: "last(grade.value) == 3", end: part, credit: { grade: 3 }, note: The others count as full. }
scores:
  - { score: total, title: Total, each: hand, value: sum(grade.value), unit: "{score}", range: [0, 9], decimals: 0, better: higher }
`

const RATED = `
evenhand: 1
id: our_ratings
version: 1.0.0
language: en
title: Ratings of ours
about: { purpose: To try rating another day., measures: [d440], minutes: [1, 2], suits: Nobody. }
raters: { count: 2, unseen: true, later: true }
lists: { tasks: [{ id: low }, { id: high }] }
steps:
  - for-each: task
    in: tasks
    steps:
      - { measured: reach, unit: cm, range: [0, 90], decimals: 0 }
      - for-each: rater
        in: raters
        steps:
          - { rated: quality, of: reach, scale: { 0: None, 1: Part, 2: Whole } }
scores:
  - { score: joined, title: Both raters, value: sum(quality.grade), unit: "{score}", decimals: 0, better: higher }
`

const records = recordsFolder()
let browser: Browser
let host: Host
let screen: Screen
beforeAll(async () => {
  for (const [id, text] of [
    ['our_parts', PROTOCOL],
    ['our_ratings', RATED],
  ] as const) {
    const folder = join(records.path, 'protocols', id)
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, 'protocol.yaml'), text)
  }
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
  screen = await Screen.open(browser, host.url)
  await enter(screen.page, 'Ines Vale')
  await addClient(screen.page, { name: 'Teodor Lindqvist', right: 'Not affected', left: 'Not affected' })
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop()])
  records.remove()
})

const isRating = ({ step }: Awaited<ReturnType<typeof viewOf>>): boolean => step?.name === 'quality'

const isAtEnd = ({ step, choosing, phase }: Awaited<ReturnType<typeof viewOf>>): boolean =>
  step === null && choosing === null && phase === 'giving'

test('the order is chosen by one key, and what a correction shows to be missing is given before the end', async () => {
  const { page } = screen
  await chooseTest(page, /Parts of ours/)
  await prepare(page, '')
  await page.getByText('All of this is right').waitFor()
  const giver = await Giver.of(page)
  await giver.pressNow()

  await page.getByText('What comes first?').waitFor()
  await picture(page, 'leftovers-order')
  expect(await screen.shown()).not.toContain('All is given')
  await page.keyboard.press('2')
  await expect.poll(async () => (await viewOf(page)).firstHand).toEqual({ hand: 'left', rule: 'chosen' })

  await giveUntil(page, giver, () => 3, isAtEnd)
  const credited = (await viewOf(page)).trials.filter(({ outcome }) => outcome === 'credited')
  expect(credited).toHaveLength(4)

  const correct = async (value: string, saves: number): Promise<void> => {
    await page.keyboard.press('e')
    await screen
      .dialog()
      .getByText(/^Trial 1, Left hand/)
      .click()
    await page.getByLabel('It should be').fill(value)
    await screen.because('Misread')
    for (let save = 0; save < saves; save += 1) {
      await screen.button('Save').click()
      if (save < saves - 1) await page.getByText('lies outside what is plausible').waitFor()
    }
    await screen.dialog().waitFor({ state: 'detached' })
  }
  await correct('7', 2)
  expect(await screen.shown()).toContain('confirmed outside the plausible range')
  await correct('2', 1)
  await page.getByText('After a correction something is missing.').waitFor()
  await picture(page, 'leftovers-missing')
  await screen.button('Give what is missing (all parts · Left hand)').click()
  await expect.poll(async () => (await viewOf(page)).step?.place).toEqual({ hand: 'left', part: 'middle' })

  await giveUntil(page, giver, () => 1, isAtEnd)
  const { trials, missing } = await viewOf(page)
  expect(missing).toEqual([])
  expect(
    trials
      .filter(({ status, place }) => status === 'standing' && place['hand'] === 'left')
      .map(({ readings }) => readings['value']?.value),
  ).toEqual([2, 1, 1])
})

test('one rater rates another day: the test ends without those grades, says so, and they are given on the same faces', async () => {
  const { page } = screen
  const giver = await Giver.of(page)
  await giveUntil(
    page,
    giver,
    () => 1,
    ({ phase }) => phase === 'finished',
  )
  await screen.button('Back to the visit').click()
  await chooseTest(page, /Ratings of ours/)
  await prepare(page, '')
  await page.getByText('All of this is right').waitFor()
  await giver.pressNow()

  const grade = async (key: string): Promise<void> => {
    await page.getByText('Whole').first().waitFor()
    await page.keyboard.press(key)
    await giver.pressNow()
  }
  await giveUntil(page, giver, () => 40, isRating)
  await grade('2')
  await expect.poll(async () => (await viewOf(page)).step?.place).toEqual({ task: 'low', rater: 'rater_2' })
  await page.keyboard.press('l')
  await expect.poll(async () => (await viewOf(page)).step?.place).toEqual({ task: 'high' })
  await giveUntil(page, giver, () => 40, isRating)
  await grade('1')
  await giver.pressNow()
  await page.getByText('Grades still to come: Rater 2').waitFor()
  await picture(page, 'leftovers-to-rate')

  await screen.button('Open the result').click()
  await page.getByText('Grades still to come: Rater 2.').waitFor()
  expect(await screen.shown()).toContain('grades are still to come from a rater who rates another day')
  expect((await resultOf(page)).scores[0]?.value).toBeNull()
  await screen.button('Give the grades').click()
  await screen.button('Give the 2 grades of Rater 2 now').click()
  await expect.poll(async () => (await viewOf(page)).phase).toBe('rating')
  await picture(page, 'leftovers-rating')
  await grade('0')
  await expect.poll(async () => (await viewOf(page)).step?.place).toEqual({ task: 'high', rater: 'rater_2' })
  await grade('2')
  await page.getByText('All grades of this rater are given.').waitFor()
  await giver.pressNow()
  await page.getByText('Everything is saved.').waitFor()
  expect((await resultOf(page)).scores[0]?.value).toBe(5)
  await screen.button('Open the result').click()
  await page.getByText(/^Rater 2: .*, by Ines Vale$/).waitFor()
})
