/**
 * Reads protocol folders from a disk into memory. Only the files that mean anything are read; links are not
 * followed, and a size that no protocol has is refused, so that a folder from outside can't do harm by being
 * listed.
 */
import { type Dirent, lstatSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { Diagnostic } from '../protocols/language/diagnostics.ts'
import type { ProtocolFolder } from '../protocols/language/folder.ts'
import { protocolHash } from './records/protocol-hash.ts'

/** The file that makes a folder a protocol's. */
export const MAIN_FILE = 'protocol.yaml'

const WORDS = '.yaml'
/** Folders beside it, each with the ending that its files have. */
const PARTS: Readonly<Record<string, string>> = { figures: '.svg', norms: '.csv', words: WORDS }
const MOST_FILES = 300
const MOST_BYTES = 2_000_000

export interface FolderOnDisk {
  /** The folder's own name. */
  readonly key: string
  readonly path: string
  readonly folder: ProtocolFolder
  readonly hash: string
  /** What could not be read at all; the reader of the language finds everything else. */
  readonly problems: readonly Diagnostic[]
}

/**
 * Reads one protocol's folder.
 * @param path the folder, or the protocol file itself, whatever its name
 * @param label what to call the folder in diagnostics
 */
export function readFolder(path: string, label: string): FolderOnDisk {
  const alone = statSync(path, { throwIfNoEntry: false })?.isFile() ?? false
  const root = alone ? dirname(path) : path
  const files = new Map<string, string>()
  const problems: Diagnostic[] = []
  const take = (name: string, file: string) => {
    const read = readText(file)
    if ('text' in read) files.set(name, read.text)
    else problems.push(unreadable(read.why, `${label}/${name}`))
  }
  const listed = partFiles(root)
  if (alone) take(MAIN_FILE, path)
  else if (entriesOf(root).some((entry) => entry.name === MAIN_FILE)) take(MAIN_FILE, join(root, MAIN_FILE))
  for (const name of listed.slice(0, MOST_FILES)) take(name, join(root, ...name.split('/')))
  if (listed.length > MOST_FILES) problems.push(unreadable('too_many_files', `${label}/${MAIN_FILE}`))
  return { key: basename(root), path: root, folder: { label, files }, hash: protocolHash(files), problems }
}

/**
 * The same protocol with wording files of the clinic's own beside it. A file of the protocol's own keeps its name.
 * @param words the folder that holds them, which need not be there
 */
export function withWords(disk: FolderOnDisk, words: string): FolderOnDisk {
  const files = new Map(disk.folder.files)
  const problems = [...disk.problems]
  const { label } = disk.folder
  for (const { name } of entriesOf(words)) {
    const as = `words/${name}`
    if (!name.endsWith(WORDS) || name.startsWith('.') || files.has(as)) continue
    const read = readText(join(words, name))
    if ('text' in read) files.set(as, read.text)
    else problems.push(unreadable(read.why, `${label}/${as}`))
  }
  return { ...disk, folder: { label, files }, hash: protocolHash(files), problems }
}

/** The names of the protocol folders right under `root`, sorted; empty where there is no such folder. */
export function folderNames(root: string): readonly string[] {
  return entriesOf(root)
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
    .map((entry) => entry.name)
    .sort()
}

function partFiles(root: string): readonly string[] {
  return Object.entries(PARTS).flatMap(([part, ending]) =>
    entriesOf(join(root, part))
      .filter((entry) => entry.name.endsWith(ending) && !entry.name.startsWith('.'))
      .map((entry) => `${part}/${entry.name}`)
      .sort(),
  )
}

function entriesOf(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
  } catch {
    return []
  }
}

type Unreadable = keyof typeof UNREADABLE

/** Why a file could not be read, and what to do about it. */
const UNREADABLE = {
  not_a_file: ['This is no ordinary file.', 'Put the file itself here; links are not followed.'],
  too_large: ['This file is larger than 2 MB, which no protocol needs.', 'Make it smaller.'],
  not_text: ['This file is not UTF-8 text.', 'Save it as UTF-8.'],
  not_readable: ['This file could not be read.', 'Give this user the right to read it.'],
  too_many_files: [
    `There are more than ${MOST_FILES} files here.`,
    'Take out what the protocol does not use.',
  ],
} as const

type Text = { readonly text: string } | { readonly why: Unreadable }

function readText(path: string): Text {
  try {
    const status = lstatSync(path)
    if (!status.isFile()) return { why: 'not_a_file' }
    if (status.size > MOST_BYTES) return { why: 'too_large' }
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)) }
  } catch (error) {
    return { why: error instanceof TypeError ? 'not_text' : 'not_readable' }
  }
}

function unreadable(why: Unreadable, file: string): Diagnostic {
  const [message, mend] = UNREADABLE[why]
  const at = { line: 1, column: 1, endLine: 1, endColumn: 1 }
  return { code: `file_${why}`, severity: 'error', file, ...at, message, mend }
}
