/**
 * Whether the screens can be read at arm's length and worked by everybody: measured in a real browser on every state
 * of every kind of step, and on what comes after a test.
 */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser, openPage, picture } from './browser.ts'
import { addClient, call, chooseTest, enter } from './clinic.ts'
import { addEveryKind } from './every-kind.ts'
import { Giver, giveUntil, viewOf } from './giving.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { violations } from './inspect.ts'

const records = recordsFolder()
let browser: Browser
let host: Host
beforeAll(async () => {
  addEveryKind(records.path)
  ;[browser, host] = await Promise.all([openBrowser(), startHost(records.path)])
})
afterAll(async () => {
  await Promise.all([browser.close(), host.stop()])
  records.remove()
})

const FULL = { width: 1280, height: 800 }
/** What is left of it at 200 %, and the width at which nothing may need to be scrolled sideways. */
const ZOOMED = { width: 640, height: 400 }
const NARROW = { width: 320, height: 640 }

const STEP_WORDS =
  '.giving-text, .step-state, .step-reading, .step-cues dd, .step-entry-label, .step-clock-number'

/** Words of the step below 24 px and of the next action below 32 px, and whatever can be pressed below 44 px. */
const unreadable = (page: Page): Promise<string[]> =>
  page.evaluate((stepWords) => {
    // What only assistive technology meets is one pixel large, or lies in something that is.
    const isSeen = (element: Element | null): boolean => {
      if (element === null) return true
      const { width, height } = element.getBoundingClientRect()
      return width > 1 && height > 1 && isSeen(element.parentElement)
    }
    const seen = (selector: string) => [...document.querySelectorAll(selector)].filter(isSeen)
    const small = (selector: string, least: number) =>
      seen(selector)
        .map((each) => ({ name: each.className, size: Number.parseFloat(getComputedStyle(each).fontSize) }))
        .filter(({ size }) => size < least)
        .map(({ name, size }) => `${name}: ${size} px, needs ${least}`)
    const tight = seen('button, input, textarea, select, a[href], label:has(input[type=radio])')
      .map((each) => ({ name: each.className, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.width < 44 || box.height < 44)
      .map(({ name, box }) => `${name}: ${box.width} by ${box.height} px, needs 44`)
    const none = document.querySelector('.main-action') === null ? ['no next action'] : []
    return [...none, ...small(stepWords, 24), ...small('.main-action', 32), ...tight]
  }, STEP_WORDS)

/** How far the page reaches beyond each of the narrow views. */
async function tooWide(page: Page): Promise<string[]> {
  const found: string[] = []
  for (const view of [ZOOMED, NARROW]) {
    await page.setViewportSize(view)
    const width = await page.evaluate(() => document.documentElement.scrollWidth)
    if (width > view.width) found.push(`${width} px wide in ${view.width}`)
  }
  await page.setViewportSize(FULL)
  return found
}

/** Whoever forces colours still sees what can be pressed and that a clock runs. */
async function unseenInForcedColours(page: Page): Promise<string[]> {
  await page.emulateMedia({ forcedColors: 'active' })
  const found = await page.evaluate(() => {
    const paper = getComputedStyle(document.body).backgroundColor
    const edgeless = [...document.querySelectorAll('button')].filter((each) => {
      const { borderTopWidth, borderTopColor, borderTopStyle } = getComputedStyle(each)
      return borderTopStyle === 'none' || Number.parseFloat(borderTopWidth) < 1 || borderTopColor === paper
    })
    const signs = [...document.querySelectorAll('.step-clock-sign')].filter(
      (each) => getComputedStyle(each).backgroundColor === paper,
    )
    return [...edgeless, ...signs].map(({ className }) => `${className}: not seen in forced colours`)
  })
  await page.emulateMedia({ forcedColors: 'none' })
  return found.filter((each) => !QUIET.some((name) => each.startsWith(name)))
}

/** Looks like a link, and has its own words to be told by; what is noted has a line of its own. */
const QUIET = ['button button-quiet', 'giving-happening', 'top-bar-name']

const inReach = async (page: Page): Promise<string[]> => [
  ...(await violations(page)),
  ...(await unreadable(page)),
]

const onStage = async (page: Page): Promise<string[]> => [
  ...(await inReach(page)),
  ...(await tooWide(page)),
  ...(await unseenInForcedColours(page)),
]

const onPage = async (page: Page): Promise<string[]> => [
  ...(await violations(page)),
  ...(await tooWide(page)),
]

async function begin(page: Page): Promise<Giver> {
  await chooseTest(page, /Every kind/)
  await page.getByText('Not present', { exact: true }).click()
  await page
    .getByRole('radiogroup', { name: /^Pain now/ })
    .getByText('0', { exact: true })
    .click()
  await page.getByRole('button', { name: 'Go on' }).click()
  await page.getByText('All of this is right').waitFor()
  const giver = await Giver.of(page)
  await giver.pressNow()
  return giver
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })

/** A time, a count or a reading, whatever is asked for. */
const answer = (): number => 21

/** Every state that the main key leads through, each looked at once. */
async function walk(page: Page, giver: Giver): Promise<Record<string, readonly string[]>> {
  const found: Record<string, readonly string[]> = {}
  for (;;) {
    const { phase, step } = await viewOf(page)
    if (phase === 'finished') return found
    const at = step === null ? 'end' : `${step.kind} ${step.state}`
    const isNew = !Object.keys(found).some((known) => known.startsWith(`${step?.kind} `))
    found[at] = isNew || step?.state === 'running' ? await onStage(page) : await inReach(page)
    await giveUntil(page, giver, answer, (now) => {
      const next = now.step === null ? 'end' : `${now.step.kind} ${now.step.state}`
      return next !== at || now.phase === 'finished'
    })
  }
}

test('every state of every kind of step, the end, the result and the history can be read and worked', async () => {
  const { page, silent } = await openPage(browser, host.url)
  page.setDefaultTimeout(8000)
  await enter(page, 'Ines Vale')
  await addClient(page, { name: 'Orla Fenwick' })
  const found = await walk(page, await begin(page))
  const kinds = new Set(Object.keys(found).map((at) => at.split(' ')[0]))
  expect([...kinds].sort()).toEqual(
    'counted demonstrate end instruct kit measured position rest timed'.split(' '),
  )
  await page.getByText('Done.').waitFor()
  found['done'] = await onStage(page)
  await button(page, 'Open the result').click()
  await page.getByRole('heading', { name: 'Every trial' }).waitFor()
  found['result'] = await onPage(page)
  await button(page, 'How it went over time').click()
  await page.getByRole('img').first().waitFor()
  found['history'] = await onPage(page)
  expect(Object.entries(found).filter(([, wrong]) => wrong.length > 0)).toEqual([])
  expect(silent.problems).toEqual([])
  await page.context().close()
})

test('what asks in between can be read and worked, and a stop that ends the visit closes it once the test is over', async () => {
  const { page } = await openPage(browser, host.url)
  page.setDefaultTimeout(8000)
  await page.getByText('Ines Vale').first().click()
  await button(page, 'Go on with this visit').click()
  const giver = await begin(page)
  const found: Record<string, readonly string[]> = {}
  await giveUntil(page, giver, answer, ({ step }) => step?.state === 'running')
  await page.keyboard.press('k')
  found['cover'] = await onStage(page)
  await page.keyboard.press('k')
  await giver.press(3, 'v')
  found['void'] = await onStage(page)
  await page.keyboard.press('1')
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  for (const [key, name] of [
    ['?', 'keys'],
    ['p', 'pause'],
    ['d', 'deviation'],
    ['c', 'close'],
  ] as const) {
    await page.keyboard.press(key)
    await page.getByRole('dialog').waitFor()
    found[name] = await onStage(page)
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
  }
  await giver.pressNow('Escape')
  found['halted'] = await onPage(page)
  await page
    .getByRole('radiogroup', { name: /^What ends/ })
    .getByText('The whole visit')
    .click()
  await page.getByRole('textbox', { name: /^Why/ }).fill('Sharp pain.')
  await page
    .getByRole('radiogroup', { name: /^Pain now/ })
    .getByText('7', { exact: true })
    .click()
  await button(page, 'Save and go on').click()
  await page.getByText('Everything has been given.').waitFor()
  await giver.pressNow()
  await page.getByText('The visit is ended.').waitFor()
  found['visit ended'] = await onStage(page)
  await picture(page, 'reading-visit-ended')
  expect(Object.entries(found).filter(([, wrong]) => wrong.length > 0)).toEqual([])
  expect((await call<{ visit: unknown }>(page, 'clinic.state', {})).visit).toBeNull()
  await page.waitForTimeout(1000)
  await page.keyboard.press('Space')
  await page.getByLabel('Find a client').fill('orla')
  await page.getByRole('button', { name: /Orla Fenwick/ }).click()
  await button(page, /^Open the result/)
    .first()
    .click()
  await page.getByText('The test was not given to its end.').first().waitFor()
})
