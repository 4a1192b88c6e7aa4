/**
 * The protocols that administrations were given by, read from the text that is kept with the records: what
 * lies in a folder today has no say in them.
 */
import type { Protocol } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { type Runner, runnerFor } from '../../protocols/runner/index.ts'
import { protocolHash } from '../records/index.ts'

export interface Kept {
  readonly protocol: Protocol
  readonly runner: Runner
  readonly files: ReadonlyMap<string, string>
}

/** Reading one and building its chart takes longer than an event may: so many stay ready. */
const READY = 24

const ready = new Map<string, Kept>()

/**
 * The protocol in these files, with its runner.
 * @throws Error where this program can't read it: a newer one kept it
 */
export function keptProtocol(files: ReadonlyMap<string, string>): Kept {
  const hash = protocolHash(files)
  const found = ready.get(hash) ?? read(hash, files)
  ready.delete(hash)
  ready.set(hash, found)
  const [oldest] = ready.keys()
  if (ready.size > READY && oldest !== undefined) ready.delete(oldest)
  return found
}

function read(hash: string, files: ReadonlyMap<string, string>): Kept {
  const { protocol } = readProtocol({ label: hash, files })
  if (!protocol) throw new Error(`This program can't read the protocol kept as ${hash}.`)
  return { protocol, runner: runnerFor(protocol), files }
}
