/** From the start command, installed and built, to the first screen that can be used; and from a press to its effect. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { keyboardOf, openBrowser, openPage } from '../desk/browser.ts'
import { addClient, chooseTest, enter, prepare } from '../desk/clinic.ts'
import { recordsFolder, startHost } from '../desk/host.ts'
import { makeTemplate, type Template } from './made-template.ts'
import { figure, turnAbout } from './measure.ts'

const root = join(import.meta.dirname, '..', '..')
let browser: Browser
let template: Template

beforeAll(async () => {
  browser = await openBrowser()
  template = await makeTemplate()
})
afterAll(async () => {
  await browser.close()
  template.remove()
})

/** Starts a program by its start script, opens its page and waits until it can be used; ms for all of it. */
async function toFirstScreen(
  script: readonly string[],
  usable: (page: Page) => Promise<unknown>,
): Promise<number> {
  const context = await browser.newContext()
  const page = await context.newPage()
  const began = performance.now()
  const child = spawn(process.execPath, [...script], { stdio: ['ignore', 'pipe', 'inherit'] })
  const ended = once(child, 'exit')
  for await (const line of createInterface({ input: child.stdout })) {
    const url = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(line)?.[0]
    if (url === undefined) continue
    await page.goto(url)
    await usable(page)
    break
  }
  const took = performance.now() - began
  await context.close()
  child.kill('SIGTERM')
  await ended
  return took
}

test('from npm start to the first usable screen', async () => {
  const records = recordsFolder()
  const script = [join(root, 'build', 'start.mjs'), '--browser', '--no-open', '--records', records.path]
  const { ours, baseline } = await turnAbout(
    9,
    () => toFirstScreen(script, (page) => page.getByRole('textbox').first().waitFor()),
    () => toFirstScreen([template.start], (page) => page.getByRole('button').waitFor()),
  )
  records.remove()
  figure('npm start, installed and built, to the first usable screen / bare template', ours / baseline, {
    most: 1.5,
  })
})

/** ms between two presses, so that the second is no bounce of the first. */
const AFTER_A_PRESS = 300

/** Presses a key and waits for the first frame that shows something else; ms from the press's own stamp. */
async function pressToPaint(page: Page, key: string): Promise<number> {
  const painted = page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        setTimeout(() => reject(new Error('the press showed nothing')), 10_000)
        const before = document.body.innerText
        const pressed = ({ timeStamp }: KeyboardEvent): void => {
          const look = (): void => {
            if (document.body.innerText === before) requestAnimationFrame(look)
            else requestAnimationFrame(() => resolve(performance.now() - timeStamp))
          }
          look()
        }
        addEventListener('keydown', pressed, { once: true, capture: true })
      }),
  )
  await page.evaluate(() => undefined)
  await (await keyboardOf(page)).press(key)
  return painted
}

/** The bare template's page, running. */
async function openTemplate(): Promise<{ page: Page; end(): Promise<void> }> {
  const child = spawn(process.execPath, [template.start], { stdio: ['ignore', 'pipe', 'inherit'] })
  const ended = once(child, 'exit')
  for await (const line of createInterface({ input: child.stdout })) {
    // A browser of its own: frames of a page behind another one are held back.
    const own = await openBrowser()
    const { page } = await openPage(own, line)
    await page.getByRole('button').waitFor()
    const end = async (): Promise<void> => {
      await own.close()
      child.kill('SIGTERM')
      await ended
    }
    return { page, end }
  }
  throw new Error('the template never said where it is')
}

test('from a key press to the painted next step', async () => {
  const records = recordsFolder()
  const host = await startHost(records.path)
  const { page } = await openPage(browser, host.url)
  await enter(page, 'Ines Vale')
  await addClient(page, { name: 'Orla Fenwick' })
  await chooseTest(page, /Nine-hole peg/)
  await prepare(page, 'Separate square box beside the board')
  await page.getByText('All of this is right').waitFor()
  const bare = await openTemplate()
  for (const press of ['Space', 'Space']) {
    await pressToPaint(page, press)
    await page.waitForTimeout(AFTER_A_PRESS)
  }
  const { ours, baseline } = await turnAbout(
    25,
    async () => {
      const took = await pressToPaint(page, 'Space')
      await page.waitForTimeout(AFTER_A_PRESS)
      await pressToPaint(page, 'u')
      await page.waitForTimeout(AFTER_A_PRESS)
      return took
    },
    () => pressToPaint(bare.page, 'Space'),
  )
  await bare.end()
  await host.stop()
  records.remove()
  figure('key press to the painted next step, durable / bare template, durable', ours / baseline, { most: 2 })
})
