/**
 * The corpus: one file or folder in `corpus/faulty` or `corpus/sound` is one whole case. What is expected stands
 * where it is expected:
 *
 * - `# expect CODE COLUMN SEVERITY "words"` behind a line: that problem in this line; several parted by `;`.
 *   The words, which may be left out, stand in its message or mend.
 * - `# expect LINE:COLUMN CODE SEVERITY "words"` in a line of its own, where a line can't carry a comment.
 * - `FILE LINE:COLUMN CODE SEVERITY "words"` in `expect.txt` of a folder, for tables and figures.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Diagnostic } from '../../protocols/language/diagnostics.ts'
import type { ProtocolFolder } from '../../protocols/language/folder.ts'
import { folderAt, folderOf } from './folders.ts'

const CORPUS = join(import.meta.dirname, 'corpus')

interface Expected {
  /** `file line:column code severity` */
  readonly place: string
  readonly words: string
}

export interface Case {
  readonly name: string
  readonly folder: ProtocolFolder
  readonly expected: readonly Expected[]
}

/** All cases of one folder of the corpus. */
export function casesIn(kind: 'faulty' | 'sound'): readonly Case[] {
  return readdirSync(join(CORPUS, kind))
    .sort()
    .map((name) => {
      const path = join(CORPUS, kind, name)
      if (!statSync(path).isDirectory()) return caseOf(name, folderOf(readFileSync(path, 'utf8')))
      return caseOf(name, folderAt(path))
    })
}

function caseOf(name: string, { files: all }: ProtocolFolder): Case {
  const files = new Map([...all].filter(([file]) => file !== 'expect.txt'))
  const expected = [...files]
    .filter(([file]) => file.endsWith('.yaml'))
    .flatMap(([file, text]) => marksIn(file, text))
  const apart = (all.get('expect.txt') ?? '').split('\n').flatMap((line) => loose(line) ?? [])
  return { name, folder: { label: '', files }, expected: [...expected, ...apart] }
}

const BEHIND = /(?<!^)\s# expect (.+)$/
const ALONE = /^# expect (\d+:\d+ .+)$/
const MARK = /^([a-z_]+) (\d+) (error|warning|advice)(?: "(.*)")?$/
const LOOSE = /^(\S+) (\d+:\d+ [a-z_]+ (?:error|warning|advice))(?: "(.*)")?$/

function marksIn(file: string, text: string): readonly Expected[] {
  return text.split('\n').flatMap((line, index) => {
    const alone = ALONE.exec(line.trimEnd())
    if (alone) return loose(`${file} ${alone[1]}`) ?? []
    return (BEHIND.exec(line.trimEnd())?.[1] ?? '').split('; ').flatMap((mark) => {
      const [, code, column, severity, words = ''] = MARK.exec(mark) ?? []
      if (code === undefined) return []
      return [{ place: `${file} ${index + 1}:${column} ${code} ${severity}`, words }]
    })
  })
}

function loose(line: string): Expected | null {
  const [, file, rest, words = ''] = LOOSE.exec(line) ?? []
  return file === undefined ? null : { place: `${file} ${rest}`, words }
}

/** A diagnostic as the corpus writes it. */
export function placeOf({ file, line, column, code, severity }: Diagnostic): string {
  return `${file} ${line}:${column} ${code} ${severity}`
}
