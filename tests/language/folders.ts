/** Protocol folders for tests: from disk, or from one text. */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { ProtocolFolder } from '../../protocols/language/folder.ts'

/** A folder on disk, read whole. */
export function folderAt(path: string, label = ''): ProtocolFolder {
  const files = new Map<string, string>()
  const walk = (inside: string): void => {
    for (const name of readdirSync(join(path, inside)).sort()) {
      const relative = inside === '' ? name : `${inside}/${name}`
      if (statSync(join(path, relative)).isDirectory()) walk(relative)
      else files.set(relative, readFileSync(join(path, relative), 'utf8'))
    }
  }
  walk('')
  return { label, files }
}

/** A folder with one protocol file, and others beside it. */
export function folderOf(text: string, others: Readonly<Record<string, string>> = {}): ProtocolFolder {
  return { label: '', files: new Map([['protocol.yaml', text], ...Object.entries(others)]) }
}
