/** What a PROTOCOL on the command line means: a protocol of the library by its id, or a path. */
import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { Diagnostic } from '../../../protocols/language/diagnostics.ts'
import type { Protocol } from '../../../protocols/language/model.ts'
import { readThrough } from '../../calls/shelf.ts'
import { type FolderOnDisk, folderNames, readFolder } from '../../protocol-folders.ts'
import { nearest } from '../nearest.ts'
import { HostProblem } from '../problem.ts'
import { libraryFolder } from '../program-folder.ts'
import { lineOf } from './lines.ts'

export interface FoundProtocol {
  readonly protocol: Protocol
  readonly disk: FolderOnDisk
  readonly from: 'library' | 'clinic'
}

/** A path as it was meant: from where the user stood, also when npm runs us from the project's folder. */
export const userPath = (given: string): string => resolve(process.env.INIT_CWD ?? process.cwd(), given)

/** @throws HostProblem where there is none, or where it has errors */
export function findProtocol(given: string): FoundProtocol {
  const library = libraryFolder()
  const known = folderNames(library)
  const inLibrary = known.includes(given)
  const path = inLibrary ? join(library, given) : userPath(given)
  if (!inLibrary && !existsSync(path))
    throw new HostProblem('command.no_protocol', {
      given,
      meant: nearest(given, known) ?? 'none',
      library: known.join(', '),
    })
  const disk = readFolder(path, given)
  const { protocol, problems } = readThrough(disk)
  if (!protocol) throw faulty(given, problems)
  return { protocol, disk, from: inLibrary ? 'library' : 'clinic' }
}

function faulty(given: string, problems: readonly Diagnostic[]): HostProblem {
  const errors = problems.filter(({ severity }) => severity === 'error')
  return new HostProblem('command.protocol_faulty', { given, problems: errors.map(lineOf).join('\n') })
}
