import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { ProtocolFolder } from '../../protocols/language/folder.ts'

const LIBRARY = fileURLToPath(new URL('../../protocols/library/', import.meta.url))

/** Every test of the library, by its folder's name. */
export const TESTS: readonly string[] = readdirSync(LIBRARY, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  .sort()

/** A library folder read whole, as a host would hand it to the reader. */
export function folderOf(test: string): ProtocolFolder {
  const root = join(LIBRARY, test)
  const files = new Map<string, string>()
  for (const entry of readdirSync(root, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    files.set(relative(root, path).split(sep).join('/'), readFileSync(path, 'utf8'))
  }
  return { label: test, files }
}

/** One file of a library folder. */
export function fileOf(test: string, path: string): string {
  return readFileSync(join(LIBRARY, test, path), 'utf8')
}

/** A norm table as written: header, then cells by column. */
export function rowsOf(test: string, path: string): readonly Readonly<Record<string, string>>[] {
  const [header = '', ...lines] = fileOf(test, path).trimEnd().split('\n')
  const columns = header.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(columns.map((column, index) => [column, cells[index] ?? '']))
  })
}
