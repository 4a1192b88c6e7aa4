import { Refused } from '../contract/procedure.ts'
import { type HostWord, isHostWord, say, type WordValues } from './words.ts'

/** Something that keeps a host or a command from running: a sentence with its mend, never a stack trace. */
export class HostProblem extends Error {
  readonly code: HostWord
  constructor(code: HostWord, values: WordValues) {
    super(say(code, values))
    this.name = 'HostProblem'
    this.code = code
  }
}

/** What to tell the user of anything that was thrown while starting or running a command. */
export function problemOf(error: unknown): { readonly code: string; readonly message: string } {
  if (error instanceof HostProblem) return { code: error.code, message: error.message }
  if (error instanceof Refused && isHostWord(error.fault.code))
    return { code: error.fault.code, message: say(error.fault.code, error.fault.detail) }
  const found = error instanceof Error ? (error.stack ?? error.message) : String(error)
  return { code: 'start.defect', message: say('start.defect', { error: found }) }
}
