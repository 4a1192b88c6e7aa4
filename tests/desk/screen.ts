/** What is read and pressed on the page of an administration when something goes wrong, in words. */
import { execFileSync } from 'node:child_process'
import type { Browser, Locator, Page } from 'playwright-core'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { openPage, type Silent } from './browser.ts'
import { call } from './clinic.ts'

/** Whether a test stands at a step of that name, in that state, with that hand. */
export const at =
  (name: string, state: string, hand: string) =>
  ({ step }: AdministrationView): boolean =>
    step?.name === name && step.state === state && step.place['hand'] === hand

export class Screen {
  readonly page: Page
  readonly silent: Silent

  private constructor(page: Page, silent: Silent) {
    this.page = page
    this.silent = silent
  }

  static async open(browser: Browser, url: string): Promise<Screen> {
    const { page, silent } = await openPage(browser, url)
    page.setDefaultTimeout(15_000)
    return new Screen(page, silent)
  }

  readonly button = (name: string): Locator => this.page.getByRole('button', { name, exact: true })
  readonly dialog = (): Locator => this.page.getByRole('dialog')
  readonly shown = (): Promise<string> => this.page.locator('main').first().innerText()

  /** Whether words can be read as the screen stands: not beyond its edge, and nothing lies over them. */
  async canBeRead(words: string): Promise<boolean> {
    const found = this.page.getByText(words).first()
    await found.waitFor()
    return found.evaluate((element) => {
      const { left, top, width, height } = element.getBoundingClientRect()
      const there = document.elementFromPoint(left + Math.min(width / 2, 40), top + height - 4)
      return there !== null && element.contains(there)
    })
  }

  /** The report as another program reads it back from the PDF, with single spaces. */
  async printed(id: string): Promise<string> {
    const which = { store: 'records', id }
    const { pdfBase64 } = await call<{ pdfBase64: string }>(this.page, 'administrations.report', which)
    const input = Buffer.from(pdfBase64, 'base64')
    return execFileSync('pdftotext', ['-', '-'], { input, encoding: 'utf8' }).replace(/\s+/g, ' ')
  }

  /** Says what is wrong in an open result and puts it right; `fill` types what that needs. */
  async putRight(what: string, fill: () => Promise<void>): Promise<void> {
    await this.button('Put something right').click()
    await this.dialog().getByText(what, { exact: true }).click()
    await fill()
    await this.button('Save').click()
    await this.dialog().waitFor({ state: 'detached' })
  }

  readonly because = (reason: string): Promise<void> =>
    this.dialog()
      .getByRole('textbox', { name: /^Reason/ })
      .fill(reason)

  /** After a stop for the client's sake: tells what ends, why and how much it hurts. */
  async settle(ends: string, reason: string, pain: string): Promise<void> {
    const asked = this.page.getByText('Clock and sound are off.')
    await asked.waitFor()
    await this.page
      .getByRole('radiogroup', { name: /^What ends/ })
      .getByText(ends)
      .first()
      .click()
    await this.page.getByRole('textbox', { name: /^Why/ }).fill(reason)
    await this.page
      .getByRole('radiogroup', { name: /^Pain now/ })
      .getByText(pain, { exact: true })
      .click()
    await this.button('Save and go on').click()
    await asked.waitFor({ state: 'detached' })
  }
}
