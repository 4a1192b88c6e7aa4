/** A made-up protocol rehearsed at the desk: no client, no questions, its first step within a second. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { call } from './clinic.ts'
import { Giver } from './giving.ts'

const HEAD = `
evenhand: 1
version: 1.0.0
language: en
about: { purpose: To try the clock., minutes: [1, 2], suits: Nobody. }
`

/** Puts a protocol with these steps and scores into the clinic's own folder. */
export function addProtocol(records: string, key: string, steps: string): void {
  const folder = join(records, 'protocols', key)
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'protocol.yaml'), `${HEAD}id: ${key}\ntitle: Made for ${key}\n${steps}`)
}

const NOTHING_ASKED = {
  kind: 'prepared',
  precautions: {},
  restrictions: [],
  painNow: 0,
  visit: {
    splint: '',
    glasses: 'none',
    hearingAid: 'none',
    seat: '',
    helper: '',
    sinceDose: '',
    tiredness: null,
  },
  kit: [],
  conditions: {},
} as const

export class Rehearsal {
  readonly page: Page
  readonly giver: Giver
  readonly id: string

  private constructor(page: Page, giver: Giver, id: string) {
    this.page = page
    this.giver = giver
    this.id = id
  }

  /** Opens a rehearsal on a page whose examiner is known, up to where it is confirmed. Gives its id. */
  static async prepare(page: Page, key: string): Promise<string> {
    const store = 'rehearsal'
    const { id } = await call<{ id: string }>(page, 'administrations.open', {
      store,
      protocol: { from: 'clinic', key },
      client: null,
      wording: null,
    })
    await call(page, 'administrations.act', { store, id, body: NOTHING_ASKED })
    await page.evaluate((place) => {
      window.location.hash = place
    }, `#/administration/${store}/${id}`)
    await page.getByText('All of this is right').waitFor()
    return id
  }

  /** The same, up to its first step. */
  static async open(page: Page, key: string): Promise<Rehearsal> {
    const id = await Rehearsal.prepare(page, key)
    const giver = await Giver.of(page)
    await giver.pressNow()
    // Until the screen of the giving itself stands, a press would be lost.
    await page.locator('.giving .main-action').waitFor()
    return new Rehearsal(page, giver, id)
  }

  async view(): Promise<AdministrationView> {
    const which = { store: 'rehearsal', id: this.id }
    return (await call<{ view: AdministrationView }>(this.page, 'administrations.view', which)).view
  }

  /** Waits until something holds of the administration, and gives it as it then stands. */
  async until(holds: (view: AdministrationView) => boolean): Promise<AdministrationView> {
    let view = await this.view()
    for (let turn = 0; turn < 400 && !holds(view); turn += 1) {
      await this.page.waitForTimeout(50)
      view = await this.view()
    }
    if (holds(view)) return view
    const { step, trials } = view
    const shown = await this.page.locator('body').innerText()
    throw new Error(
      `it never came to that: ${JSON.stringify([step?.name, step?.state, trials.at(-1)])}\n${shown}`,
    )
  }
}

/** The state that the step at hand is in. */
export const isIn =
  (state: string) =>
  ({ step }: AdministrationView): boolean =>
    step?.state === state
