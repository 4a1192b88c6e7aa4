/** What an examiner does at the desk, in words: every call here is clicks and keys on the real page. */
import type { Page } from 'playwright-core'

export interface Person {
  readonly name: string
  readonly born?: { readonly day: string; readonly month: string; readonly year: string }
  readonly sex?: 'Female' | 'Male'
  readonly dominant?: 'Right' | 'Left'
  readonly right?: string
  readonly left?: string
}

/** React Aria hides the real radio behind its label, so a click on the label is what a person does. */
const choose = async (page: Page, group: RegExp, option: string): Promise<void> =>
  page.getByRole('radiogroup', { name: group }).getByText(option, { exact: true }).click()

export async function enter(page: Page, name: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Name' }).fill(name)
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Add a client' }).waitFor()
}

export async function addClient(page: Page, person: Person): Promise<void> {
  await page.getByRole('button', { name: 'Add a client' }).click()
  await page.getByLabel('Name').fill(person.name)
  if (person.born) {
    await page.getByLabel('Day').first().fill(person.born.day)
    await page.getByLabel('Month').first().fill(person.born.month)
    await page.getByLabel('Year', { exact: true }).first().fill(person.born.year)
  }
  if (person.sex) await choose(page, /^Sex/, person.sex)
  if (person.dominant) await choose(page, /^Dominant hand/, person.dominant)
  if (person.right) await choose(page, /^Right arm/, person.right)
  if (person.left) await choose(page, /^Left arm/, person.left)
  await page.getByRole('button', { name: 'Save and begin the visit' }).click()
  await page.getByRole('button', { name: 'Choose a test' }).waitFor()
}

export async function chooseTest(page: Page, title: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'Choose a test' }).click()
  await page
    .getByRole('listitem')
    .or(page.getByRole('article'))
    .filter({ hasText: title })
    .first()
    .getByRole('button', { name: 'Give this test' })
    .click()
  await page.getByRole('button', { name: 'Go on' }).waitFor()
}

/** Answers everything that is asked before a test the plain way, and registers the piece of kit of that build. */
export async function prepare(page: Page, build: string, today: readonly string[] = []): Promise<void> {
  for (const answer of await page.getByText('Not present', { exact: true }).all()) await answer.click()
  await choose(page, /^Pain now/, '0')
  // Which pieces the clinic has comes a moment after the rest.
  await page.getByText('One moment').waitFor({ state: 'detached' })
  const register = page.getByRole('button', { name: 'Register this piece' })
  if ((await register.count()) > 0) {
    await page.getByLabel('Its own name').fill('Board 2')
    await page.getByText(build, { exact: true }).click()
    await register.click()
    await page.getByRole('button', { name: 'Another piece' }).waitFor()
  }
  for (const option of today) await page.getByText(option, { exact: true }).click()
  await page.getByRole('button', { name: 'Go on' }).click()
}

/** Makes a call of the contract from within the page, as its own code does: with its cookie and its origin. */
export async function call<T>(
  page: Page,
  name: string,
  input: Readonly<Record<string, unknown>>,
): Promise<T> {
  const reply = await page.evaluate(
    async ([path, body]) => {
      const response = await fetch(path, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      })
      return response.json()
    },
    [`/call/${name}`, JSON.stringify(input)] as const,
  )
  if (!reply.ok) throw new Error(`${name} was refused: ${JSON.stringify(reply.fault)}`)
  return reply.value
}
