/** Gives any test whole at the desk: reads what is asked now, and presses what a person would press on that face. */
import type { Page } from 'playwright-core'
import type { ClockTime } from '../../protocols/runner/moment.ts'
import type { AdministrationView, SheetCell, StepView } from '../../protocols/runner/view.ts'
import type { AskFace } from '../../protocols/steps/ask/face.ts'
import type { RatedFace } from '../../protocols/steps/rated/face.ts'
import type { TappedFace } from '../../protocols/steps/tapped/face.ts'
import type { TimedFace } from '../../protocols/steps/timed/face.ts'
import { call } from './clinic.ts'
import type { Hands } from './hands.ts'
import type { MadeUpClient } from './made-up-client.ts'

/** More than any test asks for. */
const MOST = 3000

/** ms that an act may take to be on disk. */
const PATIENCE = 15_000

/** What was entered for a trial, as the examiner remembers it: held against what was kept. */
export interface Entered {
  readonly step: string
  readonly place: StepView['place']
  readonly column: string
  readonly value: number | string
}

/** How this examiner gives a test; what is left out isn't done. */
export interface Manner {
  /** Tries that are void once they run, counted over the whole test from 0. */
  readonly voids?: readonly number[]
  /** Tallies what may be tallied once in each of these tries. */
  readonly tallies?: readonly number[]
  /** Puts the grades of a rater off where it may be, and gives them after the end. */
  readonly later?: boolean
  /** The loop, such as `site`, whose pass is closed as not allowed at this step, before anything is tried there. */
  readonly closes?: (step: StepView) => string | null
}

type Act = (step: StepView, view: AdministrationView) => Promise<void>

export class Examiner {
  readonly #page: Page
  readonly #hands: Hands
  readonly #client: MadeUpClient
  readonly #manner: Manner
  readonly #id: string
  readonly entered: Entered[] = []
  #tries = 0
  /** When the trial under way began, by the stamp of its key. */
  #begun: number | null = null

  constructor(page: Page, hands: Hands, parts: { client: MadeUpClient; manner: Manner; id: string }) {
    this.#page = page
    this.#hands = hands
    this.#client = parts.client
    this.#manner = parts.manner
    this.#id = parts.id
  }

  async view(): Promise<AdministrationView> {
    const which = { store: 'records', id: this.#id }
    const { view, saved } = await call<{ view: AdministrationView; saved: boolean }>(
      this.#page,
      'administrations.view',
      which,
    )
    if (!saved) throw new Error('it is not saved')
    return view
  }

  /** From its first step to its end. */
  async give(): Promise<AdministrationView> {
    for (let act = 0; act < MOST; act += 1) {
      const view = await this.view()
      if (view.phase === 'finished') return view
      try {
        await this.#act(view)
      } catch (error) {
        const { step, sheet, phase, offers } = view
        const at = JSON.stringify([phase, step?.name, step?.state, step?.place, sheet?.section, offers])
        throw new Error(`${at}\n${await this.#shown()}`, { cause: error })
      }
    }
    throw new Error('the test never came to its end')
  }

  #shown = (): Promise<string> => this.#page.locator('body').innerText()

  async #act(view: AdministrationView): Promise<void> {
    const { asking, choosing, sheet, step, unexplained } = view
    const isRunning = step?.state === 'running'
    if (asking !== null) return this.#does(view, () => this.#press('Yes'))
    if (unexplained.length > 0 && !isRunning && view.phase === 'giving') {
      await this.#page.getByRole('dialog').waitFor()
      return this.#does(view, () => this.#hands.key('1'))
    }
    if (choosing !== null) {
      await this.#page.getByRole('alertdialog').waitFor()
      return this.#does(view, () => this.#first(choosing.items.length))
    }
    if (sheet !== null) return this.#fillIn(view)
    if (step === null) return this.#does(view, () => this.#hands.main())
    return this.#giveStep(step, view)
  }

  async #press(name: string): Promise<void> {
    this.#hands.presses += 1
    await this.#page.getByRole('button', { name, exact: true }).press('Enter')
  }

  /** An order that is the examiner's to choose: as the list has it. */
  async #first(items: number): Promise<void> {
    for (let item = 1; item < items; item += 1) await this.#hands.key('1')
  }

  /** Does it, and waits until it is on disk and the page shows what comes next. */
  async #does(before: AdministrationView, act: () => Promise<void>): Promise<void> {
    const shown = await this.#shown()
    await act()
    await this.#hasMoved(before)
    await this.#page.waitForFunction((text) => document.body.innerText !== text, shown)
    await this.#drawn()
  }

  /** What was answered is drawn by then. */
  async #drawn(): Promise<void> {
    await this.#page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    )
  }

  async #hasMoved(before: AdministrationView): Promise<void> {
    const text = JSON.stringify(before)
    // What time brings about comes by the wall's clock, which the stamps may have run ahead of.
    const until = Math.max(Date.now(), 1000 * this.#hands.at) + PATIENCE
    while (Date.now() < until) {
      if (JSON.stringify(await this.view()) !== text) return
      await this.#page.waitForTimeout(15)
    }
    throw new Error('nothing came of it')
  }

  #note({ name, place }: Pick<StepView, 'name' | 'place'>, column: string, value: number | string): void {
    this.entered.push({ step: name, place, column, value })
  }

  async #giveStep(step: StepView, view: AdministrationView): Promise<void> {
    if (this.#manner.later === true && view.offers.some(({ event, open }) => event === 'put_off' && open))
      return this.#does(view, () => this.#hands.key('l'))
    const loop = this.#manner.closes?.(step) ?? null
    if (loop !== null) return this.#does(view, () => this.#close(step, loop))
    const acts = this.#acts[`${step.kind} ${step.state}`]
    if (acts !== undefined) return acts(step, view)
    // What time alone brings about: a rest, the end of a window, the hand that comes to rest.
    if (!view.offers.some(({ main, open }) => main && open)) {
      await this.#hasMoved(view)
      return this.#drawn()
    }
    const dead = step.face.dead as ClockTime | null | undefined
    await this.#does(view, () => (dead ? this.#hands.mainAfterStop(dead.at) : this.#hands.main()))
  }

  /** What takes more than the main key, by kind and state. */
  readonly #acts: Readonly<Record<string, Act>> = {
    'timed running': (step, view) => this.#time(step, view),
    'timed asked': (step, view) => this.#tellReached(step, view),
    'counted running': (_step, view) => this.#waits(view),
    'counted ended': (step, view) => this.#type(step, view, 'count', this.#client.count(step)),
    'tapped running': (step, view) => this.#tap(step, view),
    'tapped over': (_step, view) => this.#waits(view),
    'measured waiting': (step, view) => this.#type(step, view, 'value', this.#client.value(step)),
    'rated waiting': (step, view) => this.#rate(step, view),
    'ask waiting': (step, view) => this.#answer(step, view),
  }

  /** Closes the pass at hand as not allowed: the form offers the passes around the step from the innermost one. */
  async #close({ passes }: StepView, loop: string): Promise<void> {
    await this.#hands.key('c')
    const dialog = this.#page.getByRole('dialog')
    const at = passes.toReversed().findIndex((pass) => pass.loop === loop)
    const what = dialog.getByRole('radiogroup', { name: 'What is closed' })
    await what.locator('label').nth(at).click()
    await dialog.getByRole('radiogroup', { name: 'How it ended' }).getByText('Not allowed').click()
    await dialog.getByRole('button', { name: 'Close it' }).press('Enter')
    this.#hands.presses += 3
    await dialog.waitFor({ state: 'detached' })
  }

  async #waits(view: AdministrationView): Promise<void> {
    await this.#hasMoved(view)
    await this.#drawn()
  }

  async #time(step: StepView, view: AdministrationView): Promise<void> {
    const { splits, limit } = step.face as unknown as TimedFace
    const open = splits.findIndex(({ seconds }) => seconds === null)
    if (open >= 0) return this.#does(view, () => this.#hands.timed(1.5, `${open + 1}`))
    if (this.#begun === null) {
      this.#begun = this.#hands.at
      if (this.#manner.tallies?.includes(this.#tries)) await this.#tally(step, view)
    }
    const begun = this.#begun
    const isVoid = this.#manner.voids?.includes(this.#tries) === true
    const now = await this.view()
    this.#tries += 1
    this.#begun = null
    if (isVoid) return this.#does(now, () => this.#hands.timed(2, 'v'))
    const left = Math.max(0.3, this.#client.seconds(step) - (this.#hands.at - begun))
    await this.#does(now, () => this.#hands.timed(left))
    const seconds = this.#hands.at - begun
    if (limit === null || seconds < limit) this.#note(step, 'time', seconds)
  }

  /** Each of what may be tallied once, by the key that the screen shows for it. */
  async #tally(step: StepView, view: AdministrationView): Promise<void> {
    let before = view
    for (const { becomes, seen } of step.happenings) {
      if (becomes !== 'tally') continue
      const key = this.#page.locator('.giving-happening', { hasText: seen }).locator('kbd')
      await this.#hands.timed(0.5, (await key.innerText()).toLowerCase())
      await this.#waits(before)
      before = await this.view()
    }
  }

  async #tellReached(step: StepView, view: AdministrationView): Promise<void> {
    const next = (step.face as unknown as TimedFace).reached.find(({ count }) => count === null)
    if (next === undefined) throw new Error('nothing is asked at the limit')
    await this.#type(step, view, next.name, this.#client.reached(step, next.most))
  }

  async #type(step: StepView, view: AdministrationView, column: string, value: number): Promise<void> {
    await this.#does(view, () => this.#hands.enter(String(value)))
    this.#note(step, column, value)
  }

  /** Taps with stamps inside the window, then waits for its end by the clock. */
  async #tap(step: StepView, view: AdministrationView): Promise<void> {
    const taps = this.#client.taps(step)
    for (let tap = 0; tap < taps; tap += 1) await this.#hands.timed(0.09)
    // A press that says go is the examiner's; without one the first tap opens the window.
    const opening = (step.face as unknown as TappedFace).start === null ? 1 : 0
    this.#note(step, 'count', taps + opening)
    for (let now = view; now.step?.state === 'running'; now = await this.view()) await this.#hasMoved(now)
    await this.#drawn()
  }

  async #rate(step: StepView, view: AdministrationView): Promise<void> {
    const grade = this.#client.grade(step)
    const { grades } = step.face as unknown as RatedFace
    await this.#pick(
      view,
      grades.findIndex((each) => each.grade === grade),
    )
    this.#note(step, 'grade', grade)
  }

  async #answer(step: StepView, view: AdministrationView): Promise<void> {
    const answer = this.#client.answer(step)
    if (typeof answer === 'number') return this.#type(step, view, 'answer', answer)
    const at = (step.face as unknown as AskFace).options.findIndex(({ id }) => id === answer)
    if (at >= 0) await this.#pick(view, at)
    else await this.#does(view, () => this.#write(answer))
    this.#note(step, 'answer', answer)
  }

  /** By the key that the screen shows for it. */
  async #pick(view: AdministrationView, index: number): Promise<void> {
    const key = await this.#page.locator('.picks-one').nth(index).locator('kbd').innerText()
    await this.#does(view, () => this.#hands.key(key.toLowerCase()))
  }

  /** Words have no key of their own: the box is gone to first. */
  async #write(words: string): Promise<void> {
    await this.#page.locator('.giving').getByRole('textbox').click()
    this.#hands.presses += 1
    await this.#hands.enter(words)
  }

  /** A page: the open cell that has the focus, one after the other, and the main key once none is left. */
  async #fillIn(view: AdministrationView): Promise<void> {
    const cell = view.sheet?.cells.find(({ trial }) => trial === null)
    if (cell === undefined) return this.#does(view, () => this.#hands.main())
    const { column, typed, value } = this.#inCell(cell)
    await this.#page.waitForFunction(() => document.activeElement?.matches('.sheet-box') === true)
    await this.#hands.enter(typed)
    await this.#waits(view)
    this.#note({ name: cell.step, place: cell.place }, column, value)
  }

  #inCell(cell: SheetCell): Pick<Entered, 'column' | 'value'> & { readonly typed: string } {
    const at = { name: cell.step, place: cell.place, face: cell.face }
    if (cell.gives === 'graded') {
      const grade = this.#client.grade(at)
      return { column: 'grade', value: grade, typed: String(grade) }
    }
    if (cell.gives === 'entered') {
      const value = this.#client.value(at)
      return { column: 'value', value, typed: String(value) }
    }
    const answer = this.#client.answer(at)
    const option = (cell.face as AskFace).options.findIndex(({ id }) => id === answer)
    return { column: 'answer', value: answer, typed: option < 0 ? String(answer) : String(option + 1) }
  }
}
