/** A real Chromium, and real key events through the devtools protocol with time stamps of their own. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core'

const FLAGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** @param display an X server to show it on; left out: it is shown nowhere */
export async function openBrowser(display?: number): Promise<Browser> {
  const executablePath = process.env['EVENHAND_CHROMIUM']
  if (executablePath === undefined) throw new Error('EVENHAND_CHROMIUM names no browser: run `npm test`')
  const asRoot = process.getuid?.() === 0
  return chromium.launch({
    executablePath,
    headless: display === undefined,
    args: asRoot ? ['--no-sandbox', ...FLAGS] : FLAGS,
    ...(display !== undefined && { env: { ...process.env, DISPLAY: `:${display}` } }),
  })
}

/** What went wrong on a page without anybody seeing it: asserted empty at the end of each test. */
export interface Silent {
  readonly problems: string[]
}

export async function openPage(browser: Browser, url: string): Promise<{ page: Page; silent: Silent }> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    permissions: ['clipboard-read', 'clipboard-write'],
  })
  const page = await context.newPage()
  const problems: string[] = []
  page.on('pageerror', (error) => problems.push(`error: ${error.message}`))
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`)
  })
  page.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url())
    if (protocol.startsWith('http') && hostname !== '127.0.0.1')
      problems.push(`left the machine: ${request.url()}`)
  })
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) =>
      console.error(`policy violated: ${event.violatedDirective} ${event.blockedURI}`),
    )
  })
  await page.goto(url)
  return { page, silent: { problems } }
}

const KEYS: Readonly<Record<string, { code: string; key: string; keyCode: number; text?: string }>> = {
  Space: { code: 'Space', key: ' ', keyCode: 32, text: ' ' },
  Escape: { code: 'Escape', key: 'Escape', keyCode: 27 },
  Enter: { code: 'Enter', key: 'Enter', keyCode: 13, text: '\r' },
}

function keyOf(name: string): { code: string; key: string; keyCode: number; text?: string } {
  const known = KEYS[name]
  if (known) return known
  if (/^\d$/.test(name)) return { code: `Digit${name}`, key: name, keyCode: name.charCodeAt(0), text: name }
  const lower = name.toLowerCase()
  return {
    code: `Key${name.toUpperCase()}`,
    key: lower,
    keyCode: name.toUpperCase().charCodeAt(0),
    text: lower,
  }
}

/** The two events of a press of 40 ms, as the devtools protocol takes them, at a moment of the wall clock in seconds. */
export function keyEvents(name: string, seconds: number) {
  const { code, key, keyCode, text } = keyOf(name)
  const common = { code, key, windowsVirtualKeyCode: keyCode, nativeVirtualKeyCode: keyCode }
  return [
    { type: 'keyDown', ...common, ...(text === undefined ? {} : { text }), timestamp: seconds },
    { type: 'keyUp', ...common, timestamp: seconds + 0.04 },
  ] as const
}

export class Keyboard {
  readonly #session: CDPSession
  constructor(session: CDPSession) {
    this.#session = session
  }

  /** Presses a key at a moment of the wall clock, given in seconds with fractions; it's held for 40 ms. */
  async pressAt(name: string, seconds: number): Promise<void> {
    for (const event of keyEvents(name, seconds)) await this.#session.send('Input.dispatchKeyEvent', event)
  }

  async press(name: string): Promise<void> {
    await this.pressAt(name, Date.now() / 1000)
  }

  /** What a held key sends: one press and then repeats, until it's let go. */
  async hold(name: string, milliseconds: number): Promise<void> {
    const { code, key, keyCode, text } = keyOf(name)
    const common = {
      code,
      key,
      windowsVirtualKeyCode: keyCode,
      nativeVirtualKeyCode: keyCode,
      ...(text === undefined ? {} : { text }),
    }
    const until = performance.now() + milliseconds
    await this.#session.send('Input.dispatchKeyEvent', { type: 'keyDown', ...common })
    while (performance.now() < until) {
      await this.#session.send('Input.dispatchKeyEvent', { type: 'keyDown', autoRepeat: true, ...common })
      await new Promise((done) => setTimeout(done, 33))
    }
    await this.#session.send('Input.dispatchKeyEvent', { type: 'keyUp', code, key })
  }
}

export async function keyboardOf(page: Page): Promise<Keyboard> {
  return new Keyboard(await page.context().newCDPSession(page))
}

/** Keeps a picture for a person to look at: in a folder that is not part of the project, or in the one that is named. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['EVENHAND_PICTURES'] ?? join(import.meta.dirname, 'shots')
  mkdirSync(folder, { recursive: true })
  await page.screenshot({ path: join(folder, `${name}.png`) })
}
