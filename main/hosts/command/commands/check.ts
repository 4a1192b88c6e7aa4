import { existsSync, readdirSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { z } from 'zod'
import type { Diagnostic } from '../../../../protocols/language/diagnostics.ts'
import { readThrough } from '../../../calls/shelf.ts'
import { folderNames, MAIN_FILE, readFolder } from '../../../protocol-folders.ts'
import { HostProblem } from '../../problem.ts'
import { libraryFolder } from '../../program-folder.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { userPath } from '../find-protocol.ts'
import { lineOf } from '../lines.ts'

const shape = z.array(
  z.strictObject({
    code: z.string(),
    severity: z.enum(['error', 'warning', 'advice']),
    /** Begins with the path as it was given. */
    file: z.string(),
    line: z.int().min(1),
    column: z.int().min(1),
    message: z.string(),
    mend: z.string(),
  }),
)

export default command({
  name: 'check',
  summary: 'check.summary',
  names: { usage: 'PATH…', least: 1, most: Number.POSITIVE_INFINITY },
  options: {},
  shape,
  run({ names }) {
    const found = names.flatMap(pathsIn).map(problemsIn)
    const problems = found.flat()
    const errors = problems.filter(({ severity }) => severity === 'error').length
    const summary = say('check.found', { protocols: found.length, errors, others: problems.length - errors })
    return {
      value: problems.map(({ code, severity, file, line, column, message, mend }) => ({
        code,
        severity,
        file,
        line,
        column,
        message,
        mend,
      })),
      lines: [...problems.map(lineOf), summary],
      exit: errors ? 1 : 0,
    }
  },
})

interface Target {
  readonly path: string
  readonly label: string
  /** The protocol file itself, as given, where no folder was. */
  readonly alone: string | null
}

/**
 * The protocols under a path: a file, a protocol's folder, a folder of such folders or of loose protocol files, or a
 * library id.
 */
function pathsIn(given: string): readonly Target[] {
  const asPath = userPath(given)
  const path =
    existsSync(asPath) || !folderNames(libraryFolder()).includes(given)
      ? asPath
      : join(libraryFolder(), given)
  if (!existsSync(path)) throw new HostProblem('command.no_such_path', { given })
  if (statSync(path).isFile()) return [{ path, label: parentOf(given), alone: given }]
  const label = given.replace(/[/\\]+$/, '') || given
  if (existsSync(join(path, MAIN_FILE))) return [{ path, label, alone: null }]
  const inside = folderNames(path).filter((name) => existsSync(join(path, name, MAIN_FILE)))
  const loose = readdirSync(path).filter((name) => name.endsWith('.yaml') && !name.startsWith('.'))
  if (!inside.length && loose.length) {
    return loose.sort().map((name) => ({ path: join(path, name), label, alone: `${label}/${name}` }))
  }
  if (!inside.length) throw new HostProblem('check.nothing_here', { given, file: MAIN_FILE })
  return inside.map((name) => ({ path: join(path, name), label: `${label}/${name}`, alone: null }))
}

/** The folder part of a path as it was given; empty where it names a file right here. */
const parentOf = (given: string): string => (/[/\\]/.test(given) ? given.replace(/[/\\]+[^/\\]*$/, '') : '')

/** A loose file that isn't called as a protocol's main file is called lies in nobody's folder. */
const OF_FOLDERS = 'id_not_folder'

function problemsIn({ path, label, alone }: Target): readonly Diagnostic[] {
  const { problems } = readThrough(readFolder(path, label))
  if (alone === null) return problems
  const asRead = label ? `${label}/${MAIN_FILE}` : MAIN_FILE
  const isLoose = basename(alone) !== MAIN_FILE
  return problems
    .filter(({ code }) => !(isLoose && code === OF_FOLDERS))
    .map((problem) => (problem.file === asRead ? { ...problem, file: alone } : problem))
}
