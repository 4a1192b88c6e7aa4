/** From the start command, installed and built, to the first screen that can be used; and from a press to its effect. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { openBrowser } from '../desk/browser.ts'
import { recordsFolder } from '../desk/host.ts'
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
async function toFirstScreen(script: readonly string[], usable: (page: Page) => Promise<unknown>): Promise<number> {
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
  figure('npm start, installed and built, to the first usable screen / bare template', ours / baseline, { most: 1.5 })
})
