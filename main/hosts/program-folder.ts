import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'

/** What marks the folder that the program lies in, as a checkout and as a package. */
const MARK = join('protocols', 'library')

/**
 * The folder that the program lies in: the nearest one above this file that holds the library. Looked for and
 * not counted in steps, since a bundle puts this code elsewhere than its source.
 */
export function programFolder(): string {
  let folder = import.meta.dirname
  while (!existsSync(join(folder, MARK))) {
    const above = dirname(folder)
    if (above === folder) throw new Error(`No folder above ${import.meta.dirname} holds ${MARK}.`)
    folder = above
  }
  return folder
}

export const libraryFolder = () => join(programFolder(), MARK)
export const screenFolder = () => join(programFolder(), 'out', 'renderer')
