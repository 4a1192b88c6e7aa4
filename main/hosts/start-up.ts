/** What both windows of the program are made of: the clinic, the door for its calls, the screen's files. */
import { existsSync } from 'node:fs'
import { openClinic } from '../calls/clinic.ts'
import { handlersOf } from '../calls/handlers.ts'
import { createDispatcher, type Dispatcher } from '../contract/dispatch.ts'
import type { Push } from '../contract/pushes.ts'
import { type SalvageReport, systemClock } from '../records/index.ts'
import type { HostArguments } from './arguments.ts'
import { placeOf } from './defect.ts'
import { recordsFolder } from './folders.ts'
import { HostProblem } from './problem.ts'
import { libraryFolder, screenFolder } from './program-folder.ts'
import { createResponder, type Respond } from './respond.ts'
import { say } from './words.ts'

export interface Started {
  readonly dispatcher: Dispatcher
  readonly respond: Respond
  /** Hears every push until the returned function is called. */
  listen(listener: (push: Push) => void): () => void
  /** What became of the records, where they were damaged; null where they were sound. */
  readonly salvaged: SalvageReport | null
  /** Lets go of the records; everything acknowledged is on disk. */
  close(): void
}

/** @throws HostProblem or Refused, each with a sentence (`problemOf`) */
export async function startUp({ demo, records }: HostArguments): Promise<Started> {
  const screen = screenFolder()
  if (!existsSync(screen)) throw new HostProblem('start.no_screen', { folder: screen })
  const respond = createResponder(screen)
  const folder = recordsFolder(records, demo)
  const clinic = openClinic({ folder, library: libraryFolder(), demo, clock: systemClock })
  const dispatcher = createDispatcher({
    handlers: handlersOf(clinic),
    push: clinic.push,
    onDefect: (call, error) => console.error(say('defect.logged', { call, error: placeOf(error) })),
  })
  const { listen, salvaged, close } = clinic
  return { dispatcher, respond, listen, salvaged, close }
}
