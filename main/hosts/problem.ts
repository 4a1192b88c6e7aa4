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
export function sentenceFor(error: unknown): string {
  if (error instanceof HostProblem) return error.message
  if (error instanceof Refused && isHostWord(error.fault.code))
    return say(error.fault.code, error.fault.detail)
  return say('start.defect', {
    error: error instanceof Error ? (error.stack ?? error.message) : String(error),
  })
}
