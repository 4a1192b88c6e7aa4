import { closeSync, fsyncSync, openSync, renameSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'

/**
 * Writes a small file so that after a crash either all of it is there or none: to a file beside it first, on
 * disk, then renamed over. Readable by the owner only.
 */
export function writeWhole(path: string, text: string): void {
  const beside = `${path}.new`
  const file = openSync(beside, 'w', 0o600)
  try {
    writeSync(file, text)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
  renameSync(beside, path)
  if (process.platform === 'win32') return
  const folder = openSync(dirname(path), 'r')
  try {
    fsyncSync(folder)
  } finally {
    closeSync(folder)
  }
}
