/** An examiner's hands on the keyboard: real key presses in the page, each counted. */
import type { Page } from 'playwright-core'
import { type Keyboard, keyboardOf } from './browser.ts'

/** Seconds between two presses of one key that nobody could take for a bounce. */
const APART = 0.2
/** Seconds after a stop for which the main key is dead, and a little more. */
const DEAD = 1.1

/** What does it unless an examiner has taught another key. */
const MAIN_KEY = 'Space'

/**
 * Presses that are timed carry stamps that are ours to choose and run ahead of the wall's clock: how long a trial
 * lasted is known exactly, and nobody waits for it.
 */
export class Hands {
  readonly #page: Page
  readonly #keyboard: Keyboard
  /** Moment of the last timed press, in seconds of the wall clock. */
  at = 0
  /** Keys that were pressed, and clicks, since the count was last set. */
  presses = 0

  private constructor(page: Page, keyboard: Keyboard) {
    this.#page = page
    this.#keyboard = keyboard
  }

  static async of(page: Page): Promise<Hands> {
    return new Hands(page, await keyboardOf(page))
  }

  /** The main key, at least so many seconds after the last press of it. */
  async main(seconds = APART): Promise<void> {
    await this.#pressAt(Math.max(Date.now() / 1000, this.at + seconds), MAIN_KEY)
  }

  /** The main key as soon as it is alive again after a stop at this moment of the page's clock, in ms. */
  async mainAfterStop(at: number): Promise<void> {
    const loaded = await this.#page.evaluate(() => performance.timeOrigin)
    await this.main(Math.max(APART, (loaded + at) / 1000 + DEAD - this.at))
  }

  /** A key exactly so many seconds after the last timed press. */
  async timed(seconds: number, key = MAIN_KEY): Promise<void> {
    await this.#pressAt(this.at + seconds, key)
  }

  async #pressAt(at: number, key: string): Promise<void> {
    this.at = at
    this.presses += 1
    await this.#keyboard.pressAt(key, at)
  }

  /** Any key, now. */
  async key(key: string): Promise<void> {
    this.presses += 1
    await this.#page.keyboard.press(key)
  }

  /** What is typed, and Enter. */
  async enter(typed: string): Promise<void> {
    this.presses += typed.length + 1
    await this.#page.keyboard.type(typed)
    await this.#page.keyboard.press('Enter')
  }
}
