/** Giving a test by its main key, on a clock of stamps that runs ahead of the wall's. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import type { AdministrationView, StepView } from '../../protocols/runner/view.ts'
import type { Result } from '../../protocols/scoring/result.ts'
import { type Keyboard, keyboardOf } from './browser.ts'
import { call } from './clinic.ts'

const libraryFolder = join(import.meta.dirname, '..', '..', 'protocols', 'library')

/** The state of the page's step as it says it itself. */
const stepNow = (page: Page): Promise<string> => page.locator('main').first().innerText()

/**
 * Presses the main key with input time stamps that are ours to choose: each press comes so many seconds after the
 * one before by its stamp, however soon it's sent. What a test takes from the stamps can so be known exactly.
 */
export class Giver {
  readonly #page: Page
  readonly #keyboard: Keyboard
  #at: number

  private constructor(page: Page, keyboard: Keyboard) {
    this.#page = page
    this.#keyboard = keyboard
    this.#at = Date.now() / 1000
  }

  static async of(page: Page): Promise<Giver> {
    return new Giver(page, await keyboardOf(page))
  }

  /** Presses a key so many seconds after the last press and waits until the screen shows something else. */
  async press(seconds = 1.2, key = 'Space'): Promise<void> {
    this.#at += seconds
    await this.#pressAndSee(key)
  }

  /** Presses as soon as a hand would, by the wall's clock. */
  async pressNow(key = 'Space'): Promise<void> {
    this.#at = Math.max(Date.now() / 1000, this.#at + 0.2)
    await this.#page.locator('.main-action').first().waitFor()
    await this.#pressAndSee(key)
  }

  async #pressAndSee(key: string): Promise<void> {
    const before = await stepNow(this.#page)
    await this.#keyboard.pressAt(key, this.#at)
    await this.#page.waitForFunction((shown) => document.querySelector('main')?.innerText !== shown, before)
  }

  /** Presses without expecting that anything changes. */
  async pressInVain(seconds: number, key = 'Space'): Promise<void> {
    this.#at += seconds
    await this.#keyboard.pressAt(key, this.#at)
    await this.#page.waitForTimeout(150)
  }

  /** Arms, starts, stops after so many seconds, and keeps. */
  async timed(seconds: number): Promise<void> {
    await this.press()
    await this.press()
    await this.press(seconds)
    await this.press()
  }
}

/** The id of the newest administration of the open visit. */
async function administrationOf(page: Page): Promise<string> {
  const { visit } = await call<{ visit: { administrations: { id: string }[] } | null }>(
    page,
    'clinic.state',
    {},
  )
  const id = visit?.administrations[0]?.id
  if (id === undefined) throw new Error('no visit with an administration is open')
  return id
}

/** What the newest result of the open visit says. */
export async function resultOf(page: Page): Promise<Result> {
  const id = await administrationOf(page)
  return (await call<{ result: Result }>(page, 'administrations.result', { store: 'records', id })).result
}

export async function viewOf(page: Page): Promise<AdministrationView> {
  const id = await administrationOf(page)
  return (await call<{ view: AdministrationView }>(page, 'administrations.view', { store: 'records', id }))
    .view
}

/** Types a number where the screen asks for one, as a person does: into the field that has the focus. */
async function enterNumber(page: Page, value: number): Promise<void> {
  const before = await stepNow(page)
  await page.keyboard.type(String(value))
  await page.keyboard.press('Enter')
  await page.waitForFunction((shown) => document.querySelector('main')?.innerText !== shown, before)
}

type Answer = (step: StepView) => number

/** One press or entry at the step as it stands. */
async function giveStep(page: Page, giver: Giver, step: StepView, answer: Answer): Promise<void> {
  const at = `${step.kind} ${step.state}`
  if (at === 'timed running') return giver.press(answer(step))
  if (at === 'timed stopped') return giver.press()
  if (at === 'counted running') {
    await page.getByText('How many were there?').waitFor()
    return
  }
  // After a window the key is dead for a second, whatever was typed meanwhile.
  if (at === 'counted entered') await page.waitForTimeout(1000)
  if (at === 'counted ended' || at === 'measured waiting') return enterNumber(page, answer(step))
  if (step.kind === 'rest') {
    await page.waitForTimeout(200)
    return
  }
  return giver.pressNow()
}

/** Gives a test from its first step to its end by the main key; `answer` gives seconds, counts and readings. */
export async function giveAll(page: Page, giver: Giver, answer: Answer): Promise<void> {
  await giveUntil(page, giver, answer, ({ phase }) => phase === 'finished')
}

/** The same, up to where something holds. */
export async function giveUntil(
  page: Page,
  giver: Giver,
  answer: Answer,
  holds: (view: AdministrationView) => boolean,
): Promise<void> {
  for (let press = 0; press < 400; press += 1) {
    const view = await viewOf(page)
    if (holds(view)) return
    if (view.step === null) await giver.pressNow()
    else await giveStep(page, giver, view.step, answer)
  }
  throw new Error('the test never came to that')
}

/** A library protocol's text under another id, with its windows and rests cut to three seconds. */
export function shortened(id: string, asId: string): string {
  const text = readFileSync(join(libraryFolder, id, 'protocol.yaml'), 'utf8')
  return text
    .replace(`id: ${id}`, `id: ${asId}`)
    .replace(/^title: (.*)$/m, 'title: Short copy of $1')
    .replace(/(practice_window|window|rest_least): \{ is: \d+ s \}/g, '$1: { is: 3 s }')
}
