/** Box and block and grip given at the desk: with windows of three seconds in CI, with the real ones by `npm run long`. */
import { cpSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import type { Result } from '../../protocols/scoring/result.ts'
import { addClient, chooseTest, enter, prepare } from './clinic.ts'
import { giveAll, Giver, resultOf, shortened } from './giving.ts'

const library = join(import.meta.dirname, '..', '..', 'protocols', 'library')

/** Puts copies with short windows into the clinic's own folder. */
export function addShortCopies(records: string): void {
  for (const id of ['box_and_block', 'grip_strength']) {
    const folder = join(records, 'protocols', `short_${id}`)
    cpSync(join(library, id), folder, { recursive: true })
    writeFileSync(join(folder, 'protocol.yaml'), shortened(id, `short_${id}`))
  }
}

const RUNE = {
  name: 'Rune Halvard',
  born: { day: '14', month: '9', year: '1954' },
  sex: 'Male',
  dominant: 'Left',
  right: 'Not affected',
  left: 'Not affected',
} as const

export async function beginVisit(page: Page): Promise<void> {
  await enter(page, 'Ines Vale')
  await addClient(page, RUNE)
}

async function start(page: Page): Promise<Giver> {
  await page.getByText('All of this is right').waitFor()
  const giver = await Giver.of(page)
  await giver.pressNow()
  return giver
}

export async function giveBlocks(page: Page, title: RegExp): Promise<Result> {
  await chooseTest(page, title)
  await prepare(page, 'Partition 15.2 cm high, cubes of 2.5 cm', ['Seated'])
  const giver = await start(page)
  await giveAll(page, giver, (step) => (step.practice ? 9 : step.place['hand'] === 'left' ? 61 : 58))
  return resultOf(page)
}

const KGF: Readonly<Record<string, readonly number[]>> = { right: [31, 32.5, 30.5], left: [35, 36, 34] }

export async function giveGrip(page: Page, title: RegExp): Promise<Result> {
  await chooseTest(page, title)
  await prepare(page, 'Hydraulic dynamometer', ['Second handle position', 'Seated, elbow at a right angle'])
  const giver = await start(page)
  await giveAll(page, giver, (step) =>
    step.practice ? 12 : (KGF[String(step.place['hand'])]?.[Number(step.place['round']) - 1] ?? 0),
  )
  return resultOf(page)
}

/** A shown score of a hand, unrounded. */
export const scoreOf = (result: Result, score: string, hand: string): number | null | undefined =>
  result.scores.find((one) => one.score === score && one.place['hand'] === hand)?.value
