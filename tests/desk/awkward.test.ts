/** A hostile morning at the desk: what a newcomer does wrong is said in place, and nothing is lost by it. */
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, picture } from './browser.ts'
import { addClient, call, chooseTest, enter, prepare } from './clinic.ts'
import { Giver, giveUntil, resultOf, viewOf } from './giving.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { at, Screen } from './screen.ts'

const ORLA = {
  name: 'Orla Fenwick',
  born: { day: '3', month: '4', year: '1961' },
  sex: 'Female',
  dominant: 'Right',
  right: 'Not affected',
  left: 'Not affected',
} as const
/** A client who was in the records all the time, as a call of the contract has it. */
const UNKNOWN_ARM = { status: 'unknown', condition: '', since: '', absentPart: '', restrictions: [] }
const RUNE = {
  name: 'Rune Halvard',
  number: '',
  secondIdentifier: '',
  language: '',
  interpreter: '',
  sight: '',
  hearing: '',
  speech: '',
  neglect: '',
  agreement: { given: 'unknown', by: '', on: null },
  facts: {
    birth: { known: 'date', date: '1948-09-14' },
    sex: 'M',
    dominantBefore: 'left',
    usedNow: 'left',
    arms: { right: UNKNOWN_ARM, left: UNKNOWN_ARM },
    schoolingYears: null,
  },
}
/** An id of anything but the administration itself, which each page of a report names. */
const UUID = /[0-9a-f]{8}-[0-9a-f]{4}/
const OWN_ID = /administration [0-9a-f-]{36}/g
const BUILD = 'Separate square box beside the board'

const records = recordsFolder()
let browser: Browser
let host: Host
/** The page that the tests of this file go on with, one after another. */
let screen: Screen
beforeAll(async () => {
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop()])
  records.remove()
})

describe('one nine-hole peg test in which everything goes wrong', () => {
  test('keys pressed at the wrong moment, a hidden screen, a closed window and a typed time lose nothing', async () => {
    screen = await Screen.open(browser, host.url)
    const { silent } = screen
    let { page } = screen
    await enter(page, 'Ines Vale')
    await addClient(page, ORLA)
    await chooseTest(page, /Nine-hole peg/)
    await page.getByLabel('Splint or glove').fill('Thumb splint, left hand')
    await prepare(page, BUILD)
    await page.getByText('All of this is right').waitFor()
    let giver = await Giver.of(page)
    await giver.pressNow()

    // Undo goes back one step, a pause waits for the main key.
    await giver.pressNow()
    await page.keyboard.press('u')
    await expect.poll(async () => (await viewOf(page)).step?.name).toBe('laid_out')
    await page.keyboard.press('p')
    await screen.button('Pause now').click()
    await page.getByText('Choose one first.').waitFor()
    await screen.dialog().getByText('Interruption', { exact: true }).click()
    await screen.button('Pause now').click()
    await page.getByText('Paused').first().waitFor()
    await giver.pressNow()

    // A press just after the stop starts nothing and keeps nothing.
    await giveUntil(page, giver, () => 19.5, at('try_out', 'stopped', 'right'))
    await giver.pressInVain(0.3)
    await picture(page, 'awkward-dead')
    expect(await viewOf(page)).toSatisfy(at('try_out', 'stopped', 'right'))
    await giver.press(1)

    // The screen is covered while the clock runs; the stop works under it.
    await giveUntil(page, giver, () => 19.5, at('run', 'running', 'right'))
    await page.keyboard.press('k')
    await page.getByText('the keys work as before').waitFor()
    await picture(page, 'awkward-covered')
    await giver.press(21.27)
    expect(await viewOf(page)).toSatisfy(at('run', 'stopped', 'right'))
    await page.keyboard.press('k')
    await page.getByText('21.3 s').waitFor()

    // Void once the value was seen, then void in mid-trial: the reason comes after each.
    await giver.press(1.2, 'v')
    await screen.dialog().getByText('Why does this trial not count?').waitFor()
    await picture(page, 'awkward-void')
    await page.keyboard.press('1')
    await screen.dialog().waitFor({ state: 'detached' })
    await giver.press()
    await giveUntil(page, giver, () => 19.5, at('run', 'running', 'right'))
    await giver.press(4, 'v')
    await screen.dialog().getByText('Why does this trial not count?').waitFor()
    await screen.button('Later').click()
    expect((await viewOf(page)).unexplained).toHaveLength(1)
    await giver.press()

    // The browser is closed in mid-trial and the printed address opened again.
    await giveUntil(page, giver, () => 19.5, at('run', 'running', 'right'))
    const before = await viewOf(page)
    await page.context().close()
    screen = await Screen.open(browser, host.url)
    page = screen.page
    await page.getByText('Ines Vale').first().click()
    await screen.button('Go on with this visit').click()
    await page.getByRole('button', { name: /^Go on with it/ }).click()
    await page.getByText('All of this is right: go on').waitFor()
    expect(await screen.shown()).toMatch(/Orla Fenwick[\s\S]*Goes on with\s+Right hand/)
    await picture(page, 'awkward-again')
    giver = await Giver.of(page)
    await giver.pressNow()
    await screen.dialog().getByText('Why does this trial not count?').waitFor()
    const again = await viewOf(page)
    expect(again.trials.slice(0, -1)).toEqual(before.trials.slice(0, -1))
    expect(again.trials.at(-1)).toMatchObject({ id: before.trials.at(-1)?.id, status: 'void', outcome: null })
    expect(again).toSatisfy(at('run', 'waiting', 'right'))
    await page.keyboard.press('7')
    await screen.dialog().waitFor({ state: 'detached' })
    await page.getByText('A trial that ran then is void.').waitFor()

    // A time from another watch: text and what can hardly be are said in place; it is marked as typed.
    await page.keyboard.press('t')
    const seconds = screen.dialog().getByLabel('Seconds')
    for (const [typed, said] of [
      ['nineteen', 'This needs a number'],
      ['900', 'The time limit is 300 s'],
      ['2', 'lies outside what is plausible here'],
      ['19.52', null],
    ] as const) {
      await seconds.fill(typed)
      await screen.button('Keep this time').click()
      if (said !== null) await screen.dialog().getByText(said).waitFor()
    }
    await screen.dialog().waitFor({ state: 'detached' })
    await picture(page, 'awkward-typed')
    await giver.pressNow()

    // Stop first, the reason later: this trial ends, the rest goes on.
    await giveUntil(page, giver, () => 24.5, at('run', 'running', 'left'))
    await giver.press(6, 'Escape')
    await screen.button('Save and go on').click()
    await page.getByText('Choose what ends first.').waitFor()
    await picture(page, 'awkward-halted')
    await screen.settle('This trial', 'A cramp in the thumb.', '6')
    await giveUntil(
      page,
      giver,
      () => 24.5,
      ({ phase }) => phase === 'finished',
    )
    expect(silent.problems).toEqual([])
  })

  test('screen and paper say how each trial came about', async () => {
    const { page } = screen
    await screen.button('Open the result').click()
    await page.getByText('Every trial').first().waitFor()
    const shown = await screen.shown()
    const record = await page.getByLabel('At most six lines').inputValue()
    expect(record).toContain('right hand 19.5 s (typed by hand), left hand no value (stopped)')
    expect(record).not.toContain('Given as the protocol says')
    const paper = await screen.printed((await resultOf(page)).administration)
    await picture(page, 'awkward-result')
    for (const words of [
      '19.52 s (typed)',
      'trial 5, typed by hand',
      'A cramp in the thumb. (pain 6 of 10)',
      'Interruption',
    ])
      expect(shown).toContain(words)
    for (const words of [
      '19.52 s, typed by hand',
      'A cramp in the thumb.',
      'pain 6 of 10',
      'Thumb splint, left hand',
    ])
      expect(paper).toContain(words)
    expect(shown + paper).not.toMatch(/0\.0 s/)
  })

  test('what was entered wrongly is put right with a reason, and what stood there first stays', async () => {
    const { page } = screen
    await call(page, 'users.add', { name: 'Odile Brack' })
    await screen.putRight('A value was mistyped', async () => {
      await screen
        .dialog()
        .getByText(/19\.52 s/)
        .click()
      await screen.dialog().getByLabel('It should be').fill('nearly 20')
      await screen
        .dialog()
        .getByRole('textbox', { name: /^Reason/ })
        .fill('Read the watch wrongly.')
      await screen.button('Save').click()
      await screen.dialog().getByText('This needs a number').waitFor()
      await screen.dialog().getByLabel('It should be').fill('20.52')
    })
    await page.getByText('First: 19.52').waitFor()
    await screen.putRight('The hands were mixed up', () => screen.because('Sat opposite the client.'))
    await page.getByText('The hands were mixed up; the trials were relabelled').waitFor()
    await screen.putRight('Wrong examiner or day', async () => {
      await screen.dialog().getByText('Odile Brack', { exact: true }).click()
      await screen.because('Ines only watched.')
    })
    await page.getByText('given by Odile Brack').waitFor()
    const { administration, scores, examiner } = await resultOf(page)
    const time = (hand: string) => scores.find((one) => one.score === 'time' && one.place['hand'] === hand)
    expect([time('left')?.value, time('right')?.value, examiner]).toEqual([20.52, null, 'Odile Brack'])
    const [shown, paper] = [await screen.shown(), await screen.printed(administration)]
    for (const words of [
      '19.52',
      '20.52 s',
      'Read the watch wrongly.',
      'Sat opposite the client.',
      'Ines only watched.',
    ])
      expect([words, shown.includes(words), paper.includes(words)]).toEqual([words, true, true])
    for (const text of [shown, paper]) expect(text.replace(OWN_ID, '')).not.toMatch(UUID)
  })

  test('the wrong client, noticed at the end: it goes to the right one, and the first keeps a trace', async () => {
    const { page } = screen
    const { administration } = await resultOf(page)
    await screen.button('Put something right').click()
    await screen.dialog().getByText('Wrong client', { exact: true }).click()
    await screen.button('Find the right client').click()
    await screen.button('End this visit and find the right client').click()
    await page.getByLabel('Find a client').waitFor()
    await call(page, 'clients.add', { profile: RUNE })
    await page.getByLabel('Find a client').fill('Rune')
    await page.getByText('Rune Halvard').first().click()
    await screen.button('Move the test').click()
    await page.getByText('Write in a few words what happened.').waitFor()
    await page.getByRole('textbox', { name: /^What happened/ }).fill('Two clients in one room.')
    await screen.button('Move the test').click()
    await page.getByRole('heading', { name: 'Rune Halvard' }).waitFor()
    expect(await screen.shown()).not.toContain('Orla')
    await page.getByRole('button', { name: /^Open the result/ }).click()
    await page.getByText('Two clients in one room.').waitFor()
    await page
      .getByText(/Men and boys, 75 years and over, left hand/)
      .first()
      .waitFor()
    const paper = await screen.printed(administration)
    expect(paper).toContain('Rune Halvard')
    expect(paper).not.toMatch(/Orla|Fenwick/)
    for (const text of [await screen.shown(), paper]) expect(text.replace(OWN_ID, '')).not.toMatch(UUID)

    await page.getByRole('button', { name: 'Evenhand' }).click()
    await screen.button('End this visit').click()
    await page.getByLabel('Find a client').fill('Orla')
    await page.getByText('Orla Fenwick').first().click()
    await page.getByText('entered in error').waitFor()
    await picture(page, 'awkward-moved')
    expect(await screen.shown()).not.toMatch(/Rune|20\.5/)
    await screen.button('End this visit').click()
  })
})
