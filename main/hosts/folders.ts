/** Where records lie on this machine. */
import { homedir, platform } from 'node:os'
import { join } from 'node:path'
import { PROGRAM } from '../program.ts'

type Environment = Readonly<Record<string, string | undefined>>

/** The folder that the platform gives a program for a user's data. */
export function dataFolder(system: NodeJS.Platform, home: string, environment: Environment): string {
  if (system === 'win32')
    return join(environment.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), PROGRAM.name)
  if (system === 'darwin') return join(home, 'Library', 'Application Support', PROGRAM.name)
  return join(environment.XDG_DATA_HOME || join(home, '.local', 'share'), PROGRAM.command)
}

/**
 * The folder of this start's records. A demo clinic lies in a folder of its own, under whatever folder was
 * asked for, so that it can't come to lie among real records.
 */
export function recordsFolder(asked: string | null, demo: boolean): string {
  const data = asked ?? dataFolder(platform(), homedir(), process.env)
  if (demo) return join(data, 'demo')
  return asked ?? join(data, 'records')
}
