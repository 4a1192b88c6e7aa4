import type { Closing } from '../../protocols/language/model.ts'
import type { Place, Recorded } from '../../protocols/runner/events.ts'
import type { AdministrationView, SheetCell, StepView, Trial } from '../../protocols/runner/view.ts'
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import type { NormComparison } from '../../protocols/scoring/result.ts'
import { belongs } from '../../protocols/scoring/rows.ts'
import { scoreAll, type Scored } from '../../protocols/scoring/scores.ts'
import { LogBook, type Occasion } from './log-book.ts'

export { arms, facts } from './log-book.ts'

/** What comes of an administration, replayed from its log before it is scored. */
export interface Given {
  /** Value of a score in a hand or of the whole; null where it has none. */
  value(score: string, hand?: string): number | null
  /** Values of a score of several loops, by the pass of its last one. */
  each(score: string, place: Place): Readonly<Record<string, number | null>>
  /** True where a score is a bound: at least its value. */
  over(score: string, place: Place): boolean
  /** The hands in which there is a score at all, with a value or without. */
  hands(score: string): readonly unknown[]
  /** Why a score has no value. */
  why(score: string, hand?: string): string | null
  /** How a table meets a score in a hand. */
  norm(name: string, score: string, hand: string): NormComparison
  readonly trials: readonly Trial[]
  /** The hands in the order they were given, with the rule that decided it. */
  readonly order: { readonly items: readonly string[]; readonly rule: string }
  readonly log: readonly Recorded[]
}

/** Begins to give a library test; see `Giving`. */
export const give = (name: string, occasion: Occasion = {}): Giving => new Giving(name, occasion)

/** Gives a library test as an examiner would, step by step, through the runner's public door. */
export class Giving {
  readonly #book: LogBook
  /** The least of each rest that was kept, in seconds. */
  readonly rests: number[] = []

  constructor(name: string, occasion: Occasion) {
    this.#book = new LogBook(name)
    this.#book.open(occasion)
  }

  /** The step at hand; null once all is given. */
  step(): StepView | null {
    return this.#book.step()
  }

  view(): AdministrationView {
    return this.#book.view()
  }

  /** Goes on through kit, position, words, demonstration and rests to the next trial, or to the end. */
  on(): this {
    const book = this.#book
    const pass: Readonly<Record<string, () => void>> = {
      kit: () => {
        const pieces = book.here().face.pieces as readonly { readonly id: string }[]
        book.press('checked', { ticked: pieces.map(({ id }) => id), problems: [], stamp: book.stamp(3000) })
      },
      position: () => book.press('set', { stamp: book.stamp(3000) }),
      instruct: () => book.press('said', { stamp: book.stamp(3000) }),
      demonstrate: () => book.press('shown', { stamp: book.stamp(3000) }),
      rest: () => {
        this.rests.push(Number(book.here().face.least))
        book.press('began', book.tick(0))
        book.press('over', book.tick(1000 * Number(book.here().face.least)))
      },
    }
    for (let step = book.step(); step && pass[step.kind]; step = book.step()) pass[step.kind]?.()
    return this
  }

  /** The trial at hand begins, to be broken off by what follows. */
  begins(): this {
    this.#book.press('armed', { stamp: this.#book.stamp(2000) })
    this.#book.press('started', { stamp: this.#book.stamp(1500) })
    return this
  }

  /** An event of the step at hand, so many milliseconds after the last one. */
  presses(event: string, after: number): this {
    this.#book.press(event, { stamp: this.#book.stamp(after) })
    return this
  }

  /** A timed step that takes so many seconds; at its limit where it takes longer. */
  run(seconds: number): this {
    this.on().begins()
    const limit = this.#book.here().face.limit as number | null
    if (limit !== null && seconds >= limit) this.#book.press('limit_reached', this.#book.tick(1000 * limit))
    else this.#book.press('stopped', { stamp: this.#book.stamp(1000 * seconds) })
    return this.#kept()
  }

  /** A timed step that comes to its limit, where it is told how far it went. */
  limited(what: string, count: number): this {
    this.on().begins()
    this.#book.press('limit_reached', this.#book.tick(1000 * Number(this.#book.here().face.limit)))
    this.#book.press('reached', { what, count })
    return this.#kept()
  }

  /** The clock that runs stops so many seconds after its start, whatever happened in between. */
  stops(seconds: number): this {
    const { startedAt } = this.#book.here().face as { readonly startedAt: { readonly at: number } }
    this.#book.press('stopped', { stamp: this.#book.stampAt(startedAt.at + 1000 * seconds) })
    return this.#kept()
  }

  /** A question is answered, and the answer kept. */
  answers(answer: string | number): this {
    this.on()
    this.#book.press('answered', { answer, confirmed: false })
    return this.#kept()
  }

  /** The first blank cell of the sheet at hand. */
  cell(): SheetCell | null {
    return this.view().sheet?.cells.find(({ trial }) => trial === null) ?? null
  }

  /** The first blank cell is filled in, and the sheet left once none is blank. */
  fills(value: number | string): this {
    this.on()
    const { kind, gives, step, place } = this.#blank()
    const reading = kind === 'ask' ? { answer: value } : { value }
    this.#book.act({ kind: `${kind}.${gives}`, step, place, ...reading, confirmed: false })
    return this.#left()
  }

  /** The first blank cell is closed without a value. */
  closesCell(outcome: Closing): this {
    const { step, place } = this.#blank()
    this.#book.act({ kind: 'closed', what: step, place, outcome, reason: 'as seen' })
    return this.#left()
  }

  /** What the last cell was given is void, for a reason told at once: the cell is blank again. */
  voidsCell(reason: string): this {
    const { step, place } = this.view().sheet?.cells.findLast(({ trial }) => trial !== null) ?? this.#blank()
    this.#book.act({ kind: 'voided', step, place, stamp: null })
    const [trial = ''] = this.view().unexplained
    this.#book.act({ kind: 'explained', trial, happening: reason, remark: '' })
    return this
  }

  /** What an act is refused with; null where it is taken. */
  refusal(act: () => unknown): string | null {
    try {
      act()
      return null
    } catch (error) {
      return /: (\w+)$/.exec(String(error))?.[1] ?? String(error)
    }
  }

  /** Rules that did something in this administration so far, in the order of the file. */
  noted(): readonly string[] {
    return this.view().rules.flatMap(({ rule, did }) => (did === 'nothing' ? [] : [rule]))
  }

  /** A window with so many taps, and what is counted at its end. */
  window(count: number, taps: number = count): this {
    this.on().begins()
    const ms = 1000 * Number(this.#book.here().face.window)
    const apart = Math.floor((ms - 1) / Math.max(taps, 1))
    for (let tap = 1; tap <= taps; tap += 1) this.#book.press('tapped', { stamp: this.#book.stamp(apart) })
    this.#book.press('window_ended', this.#book.tick(ms - taps * apart))
    this.#book.press('entered', { count, confirmed: false })
    return this.#kept()
  }

  /** A window in which the client presses the key so often, the hand then at rest. */
  taps(count: number): this {
    this.on().begins()
    const ms = 1000 * Number(this.#book.here().face.window)
    const apart = Math.floor((ms - 1) / Math.max(count, 1))
    for (let tap = 1; tap <= count; tap += 1) this.#book.press('tapped', { stamp: this.#book.stamp(apart) })
    this.#book.press('window_ended', this.#book.tick(ms - count * apart))
    this.#book.press('settled', this.#book.tick(1000))
    return this.#kept()
  }

  /** A grade; with a reason where it is above what the trial allows. */
  grades(grade: number, reason: string | null = null): this {
    this.on()
    this.#book.press('graded', { grade, reason })
    return this.#kept()
  }

  /** The rater at hand rates another day. */
  putsOff(rater: string): this {
    this.#book.act({ kind: 'put_off', rater })
    return this.on()
  }

  /** The test is finished, and another day a rater gives what is still to come. */
  ratesLater(rater: string): this {
    this.#book.act({ kind: 'finished' })
    this.#book.act({ kind: 'rating_begun', rater })
    return this.on()
  }

  /** What a rule asks before it does anything is answered. */
  rules(rule: string, apply: boolean): this {
    const { asking } = this.view()
    if (asking === null) throw new Error('No rule asks anything.')
    this.#book.act({ kind: 'ruled', rule, place: asking.place, apply })
    return this.on()
  }

  /** A value read from the instrument. */
  reads(value: number): this {
    this.on()
    this.#book.press('entered', { value, confirmed: false })
    return this.#kept()
  }

  /** Practice, up to the first trial that counts. */
  practised(): this {
    const practise: Readonly<Record<string, () => void>> = {
      timed: () => this.run(25),
      counted: () => this.window(14),
      measured: () => this.reads(8),
      tapped: () => this.taps(20),
    }
    for (this.on(); this.step()?.practice; ) practise[this.#book.here().kind]?.()
    return this
  }

  /** Something happens in the trial at hand. */
  happens(happening: string): this {
    const { name, place } = this.#book.here()
    this.#book.act({ kind: 'happened', step: name, place, happening, stamp: this.#book.stamp(500) })
    return this
  }

  /** The trial at hand is void, for a reason told at once. */
  voided(reason: string): this {
    const { name, place } = this.#book.here()
    this.#book.act({ kind: 'voided', step: name, place, stamp: this.#book.stamp(500) })
    const [trial = ''] = this.view().unexplained
    this.#book.act({ kind: 'explained', trial, happening: reason, remark: '' })
    return this.on()
  }

  /** The trial, the hand or the test is closed without a result. */
  closes(what: string, outcome: Closing): this {
    this.#book.act({ kind: 'closed', what, place: this.step()?.place ?? {}, outcome, reason: 'as seen' })
    return this.on()
  }

  /** After a stop for the client's sake: what ends. */
  settles(ends: 'nothing' | 'trial' | 'hand' | 'test', pain: number | null): this {
    this.#book.act({ kind: 'settled', ends, reason: 'pain', pain, done: 'rested' })
    return this.on()
  }

  scores(): Given {
    const { runner, log } = this.#book
    const { administration, refused } = runner.replay(log)
    if (refused.length > 0) throw new Error('The log is not taken a second time.')
    const standing = runner.standing(administration)
    const scored = scoreAll(standing)
    const find = (name: string, hand?: string): Scored => {
      const found = scored.find(({ score, place }) => score.name === name && (!hand || place.hand === hand))
      if (!found) throw new Error(`There is no score ${name} ${hand ?? ''}.`)
      return found
    }
    const norm = (name: string, score: string, hand: string): NormComparison => {
      const { scores } = buildResult({
        protocol: this.#book.protocol,
        administration: givenOf(log[0]?.id ?? '', administration),
        standing,
        earlier: [],
        verified: new Map(),
      })
      const found = scores.find((each) => each.score === score && each.place.hand === hand)
      const comparison = found?.norms.find((each) => each.norm === name)
      if (!comparison) throw new Error(`There is no table ${name} for ${score}.`)
      return comparison
    }
    const { items, rule } = standing.orders.findLast(({ section }) => section === 'hand') ?? {
      items: [],
      rule: '',
    }
    return {
      value: (score, hand) => find(score, hand).value,
      each: (name, within) =>
        Object.fromEntries(
          scored
            .filter(({ score, place }) => score.name === name && belongs(place, within))
            .map(({ score, place, value }) => [String(place[score.each.at(-1) ?? '']), value]),
        ),
      over: (name, within) =>
        scored.some(({ score, place, over }) => score.name === name && belongs(place, within) && over),
      hands: (name) => scored.flatMap(({ score, place }) => (score.name === name ? [place.hand] : [])),
      why: (score, hand) => find(score, hand).missing?.code ?? null,
      norm,
      trials: standing.trials,
      order: { items, rule },
      log,
    }
  }

  #blank(): SheetCell {
    const cell = this.cell()
    if (!cell) throw new Error('No cell is blank.')
    return cell
  }

  #left(): this {
    const { sheet } = this.view()
    if (sheet?.cells.every(({ trial }) => trial !== null)) {
      this.#book.act({ kind: 'sheet_left', section: sheet.section, place: sheet.place })
    }
    return this.on()
  }

  #kept(): this {
    this.#book.press('kept', { stamp: this.#book.stamp(2000) })
    return this.on()
  }
}
