/** Paper forms of library tests, made and read back by other programs. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { renderForm } from '../../main/reports/index.ts'
import type { Protocol } from '../../protocols/language/model.ts'

const NOW = '2026-03-02T11:30:00.000+01:00'

const tool = (name: string, ...args: string[]) =>
  execFileSync(name, args, { encoding: 'utf8', maxBuffer: 1 << 24, stdio: ['ignore', 'pipe', 'ignore'] })

/** Letters and digits alone: how lines break, and which quotation marks stand around, says nothing. */
const bare = (words: string) => words.normalize('NFKC').replace(/[^\p{L}\p{N}]/gu, '')

export interface FormRead {
  readonly pages: readonly string[]
  readonly told: number
  readonly info: string
  /** The tags, worked out when asked for: it takes seconds. */
  structure(): string
  /** True where these words stand in it, however the lines break. */
  has(words: string): boolean
}

export function formRead(protocol: Protocol): FormRead {
  const { bytes, pages: told } = renderForm({ protocol, hash: 'f'.repeat(64), now: NOW })
  const at = mkdtempSync(join(tmpdir(), 'evenhand-form-'))
  onTestFinished(() => rmSync(at, { recursive: true, force: true }))
  const file = join(at, 'form.pdf')
  writeFileSync(file, bytes)
  const text = tool('pdftotext', '-raw', file, '-')
  const pages = text.split('\f').filter((page) => page.trim())
  // Headers and footers stand between two pages, also in the middle of a sentence.
  const body = pages.map((page) => page.split(/Evenhand \d+\.\d+\.\d+ leads through/)[0] ?? '').join('')
  const squeezed = bare(body)
  return {
    pages,
    told,
    info: tool('pdfinfo', file),
    structure: () => tool('pdfinfo', '-struct', file),
    has: (words) => squeezed.includes(bare(words)),
  }
}

/** A text's own words: what stands outside all braces, and inside those that choose. */
function pieces(words: string): readonly string[] {
  const found: string[] = []
  let depth = 0
  let piece = ''
  for (const one of words) {
    if (one === '{' || one === '}') {
      if (depth === 0) found.push(piece)
      piece = ''
      depth += one === '{' ? 1 : -1
    } else if (depth === 0) piece += one
  }
  return [...found, piece]
}

/** Texts that are of a result, and not of how a test is given. */
const OF_RESULTS = /^(norms?|change)\./

/** Every stretch of words of a protocol's own texts that a form doesn't have. */
export function missingFrom(form: FormRead, protocol: Protocol): readonly string[] {
  const texts = Object.entries(protocol.words[0]?.texts ?? {}).filter(([key]) => !OF_RESULTS.test(key))
  return texts.flatMap(([key, words]) =>
    pieces(words)
      .filter((piece) => !form.has(piece))
      .map((piece) => `${key}: ${piece.trim()}`),
  )
}
