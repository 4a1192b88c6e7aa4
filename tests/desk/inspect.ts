/** Looks a screen over: what assistive technology meets, and whether each of its words comes from the words files. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import type { Page } from 'playwright-core'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Violations of WCAG 2.2 A and AA, as `rule: element`. Injected past the policy, as a tool of the browser would be. */
export async function violations(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page)
  await session.send('Runtime.evaluate', { expression: axeSource })
  const { result } = await session.send('Runtime.evaluate', {
    expression: `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })
      .then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => id + ': ' + target.join(' '))))`,
    awaitPromise: true,
    returnByValue: true,
  })
  await session.detach()
  return result.value as string[]
}

const flat = (text: string): string => text.replace(/\s+/g, ' ').trim()

const library = join(import.meta.dirname, '..', '..', 'protocols', 'library')
const fileText = readdirSync(library, { recursive: true })
  .map(String)
  .filter((file) => /\.(ya?ml|svg)$/.test(file))
  .map((file) => readFileSync(join(library, file), 'utf8'))
  .join('\n')
/** All words that protocols bring, without what YAML and messages put around them. */
const protocolWords = new Set(flat(fileText).split(/[^\p{L}\p{N}]+/u))

/**
 * Texts on screen, and labels, that neither the words files (bent by the pseudo-locale, so between `⟦` and `⟧`), nor
 * a protocol, nor the test's own data brought there.
 */
export async function unworded(page: Page, data: readonly string[]): Promise<string[]> {
  const texts = await page.evaluate(() => {
    const found: string[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const inside = node.parentElement?.closest('script, style, kbd')
      if (!inside && !node.parentElement?.closest('[lang]:not(html)')) found.push(node.textContent ?? '')
    }
    for (const element of document.querySelectorAll('[aria-label], [placeholder], [title], [alt]')) {
      for (const name of ['aria-label', 'placeholder', 'title', 'alt'])
        found.push(element.getAttribute(name) ?? '')
    }
    return found
  })
  const known = new Set(data.flatMap((text) => text.split(/[^\p{L}\p{N}]+/u)))
  const bare = texts.map((text) => flat(text.replace(/⟦[\s\S]*?⟧/g, '').replace(/[⟦⟧]/g, '')))
  return bare.filter((text) =>
    text
      .split(/[^\p{L}\p{N}]+/u)
      .some((word) => /\p{L}{2}/u.test(word) && !protocolWords.has(word) && !known.has(word)),
  )
}
