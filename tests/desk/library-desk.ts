/** A desk with a client in a visit, at which tests of the library are given whole, one after the other. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import type { Output } from '../../main/contract/procedures.ts'
import { randomFrom } from '../../protocols/random.ts'
import type { Result } from '../../protocols/scoring/result.ts'
import { withRecords } from '../faults/kills.ts'
import { openPage, type Silent } from './browser.ts'
import { addClient, call, enter } from './clinic.ts'
import { Examiner } from './examiner.ts'
import { resultOf, viewOf } from './giving.ts'
import { Hands } from './hands.ts'
import { type Host, recordsFolder, startHost } from './host.ts'
import { type Plan, planOf } from './library-plans.ts'
import { MadeUpClient } from './made-up-client.ts'
import { checkActed, checkEntered, checkReplayed, checkShown } from './what-stands.ts'

const library = join(import.meta.dirname, '..', '..', 'protocols', 'library')

const ORLA = {
  name: 'Orla Fenwick',
  born: { day: '3', month: '4', year: '1961' },
  sex: 'Female',
  dominant: 'Right',
  right: 'Not affected',
  left: 'Affected',
} as const

/** What was given at the desk. */
export interface GivenThere {
  readonly result: Result
  /** Times, readings, grades and answers: what a form on paper would hold. */
  readonly entries: number
  /** Keys and clicks from the start of the test to its end. */
  readonly presses: number
  /** By the wall's clock, preparation included. */
  readonly seconds: number
}

type Folder = ReturnType<typeof recordsFolder>
type Key = Readonly<Record<'from' | 'key', string>>

/** A library protocol's text with its windows and least rests cut short; nothing else differs. */
function cutShort(id: string, text: string): string {
  return text
    .replace(`id: ${id}`, `id: short_${id}`)
    .replace(/^title: (.*)$/m, 'title: Short copy of $1')
    .replace(
      /(practice_window|window|rest_least|rest_between_kinds): \{ is: \d+ (?:s|min) \}/g,
      '$1: { is: 1 s }',
    )
    .replace(/(window|least): \d+ s$/gm, '$1: 1 s')
    .replace('series == 4 ? 60 : 15', 'series == 4 ? 2 : 1')
}

const textIn = (folder: string): string => readFileSync(join(folder, 'protocol.yaml'), 'utf8')

function addShortCopy(records: string, id: string): void {
  const folder = join(records, 'protocols', `short_${id}`)
  cpSync(join(library, id), folder, { recursive: true })
  writeFileSync(join(folder, 'protocol.yaml'), cutShort(id, textIn(folder)))
}

const pick = (page: Page, group: RegExp, option: string): Promise<void> =>
  page.getByRole('radiogroup', { name: group }).getByText(option, { exact: true }).click()

/** A label that begins with these words, with a capital or without. */
const startingWith = (words: string): RegExp =>
  new RegExp(`^${words.replaceAll(/[^\w\s]/g, (sign) => `\\${sign}`)}`, 'i')

export class LibraryDesk {
  readonly #records: Folder
  readonly #given: Result[] = []
  readonly #page: Page
  readonly #hands: Hands
  readonly #silent: Silent
  readonly #host: Host

  private constructor(parts: { records: Folder; host: Host; page: Page; hands: Hands; silent: Silent }) {
    this.#records = parts.records
    this.#host = parts.host
    this.#page = parts.page
    this.#hands = parts.hands
    this.#silent = parts.silent
  }

  /** @param tests those that will be given: of those with windows or rests, copies with short ones */
  static async open(browser: Browser, tests: readonly string[]): Promise<LibraryDesk> {
    const records = recordsFolder()
    for (const id of tests) if (planOf(id).isShort) addShortCopy(records.path, id)
    const host = await startHost(records.path)
    const { page, silent } = await openPage(browser, host.url)
    page.setDefaultTimeout(20_000)
    await enter(page, 'Ines Vale')
    await addClient(page, ORLA)
    return new LibraryDesk({ records, host, page, silent, hands: await Hands.of(page) })
  }

  /** What went wrong on the page without anybody seeing it. */
  get problems(): readonly string[] {
    return this.#silent.problems
  }

  /** Gives a test from the choice of it to its result, by keys and clicks alone. */
  async give(id: string): Promise<GivenThere> {
    const page = this.#page
    const began = performance.now()
    await this.#toVisit()
    const { isShort, seed, does, manner, conditions, rules } = planOf(id)
    await this.#choose(
      isShort ? { from: 'clinic', key: `short_${id}` } : { from: 'library', key: id },
      conditions,
    )
    this.#hands.presses = 0
    await this.#hands.main()
    await page.locator('.giving .main-action').waitFor()
    const { id: administration } = await viewOf(page)
    const client = new MadeUpClient(randomFrom(seed), does)
    const examiner = new Examiner(page, this.#hands, { client, manner, id: administration })
    const { rules: acted } = await examiner.give()
    checkActed(acted, rules)
    await page.getByText('Done.').waitFor()
    const { presses } = this.#hands
    const seconds = (performance.now() - began) / 1000
    const result = await resultOf(page)
    this.#given.push(result)
    checkEntered(result, examiner.entered)
    await this.#readResult(result)
    return { result, entries: examiner.entered.length, presses, seconds }
  }

  /** From wherever a test was left, on a page loaded anew: its keys know nothing of stamps that ran ahead. */
  async #toVisit(): Promise<void> {
    const { visit } = await call<Output<'clinic.state'>>(this.#page, 'clinic.state', {})
    await this.#page.evaluate((client) => {
      window.location.hash = `#/client/${client}`
    }, visit?.client ?? '')
    await this.#page.reload()
    this.#hands.at = 0
    await this.#page.getByRole('button', { name: 'Choose a test' }).waitFor()
  }

  async #choose(key: Key, told: Plan['conditions']): Promise<void> {
    const page = this.#page
    const { line, ...card } = await call<Output<'protocols.read'>>(page, 'protocols.read', key)
    await page.getByRole('button', { name: 'Choose a test' }).click()
    const heading = page.getByRole('heading', { name: line.title, exact: true })
    await page
      .getByRole('article')
      .filter({ has: heading })
      .getByRole('button', { name: 'Give this test' })
      .click()
    await page.getByRole('button', { name: 'Go on' }).waitFor()
    for (const answer of await page.getByText('Not present', { exact: true }).all()) await answer.click()
    await pick(page, /^Pain now/, '0')
    const stand = card.conditions.map(({ title, name, usual, options }) => {
      const id = told[name] ?? usual
      return [title, (options.find((each) => each.id === id) ?? options[0])?.text ?? ''] as const
    })
    const conditions = async (): Promise<void> => {
      for (const [title, option] of stand) {
        const groups = page.getByRole('radiogroup', { name: startingWith(title) })
        for (const group of await groups.all()) await group.getByText(option, { exact: true }).click()
      }
    }
    const register = page.getByRole('button', { name: 'Register this piece' })
    while ((await register.count()) > 0) {
      const left = await register.count()
      await page.getByLabel('Its own name').first().fill('Piece 2')
      await conditions()
      await register.first().click()
      await page.waitForFunction(
        (before) => document.querySelectorAll('.starting-piece').length < before,
        left,
      )
    }
    await conditions()
    await page.getByRole('button', { name: 'Go on' }).click()
    await page.getByText('All of this is right').waitFor()
  }

  /** Opens the result and holds its table of trials against what was kept; then goes back to the visit. */
  async #readResult(result: Result): Promise<void> {
    const page = this.#page
    await page.getByRole('button', { name: 'Open the result' }).click()
    const rows = page.getByRole('table', { name: 'Every trial', exact: true }).locator('tbody tr')
    await rows.first().waitFor()
    const shown = await rows.allInnerTexts()
    checkShown(result, shown)
    await page.getByRole('button', { name: 'Back' }).first().click()
  }

  /**
   * Ends the host, and works every score out anew from the events on disk by the protocol that is kept with them.
   * @returns how many
   */
  async close(): Promise<number> {
    await this.#page.context().close()
    await this.#host.stop()
    await withRecords(this.#records.path, (records) => {
      for (const result of this.#given) checkReplayed(records, result)
    })
    this.#records.remove()
    return this.#given.length
  }
}
