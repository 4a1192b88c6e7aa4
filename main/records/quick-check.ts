/**
 * What can be told of a file in a moment, however long its log is: that nobody found damage in it before, that its
 * last event is the one its device hashed, and that what this device sealed last is there.
 */
import { existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { digestOf, FIRST, hashOf } from './chain.ts'
import type { Keys } from './keys.ts'
import { envelopeOf, type Log } from './log.ts'
import { writeWhole } from './whole-file.ts'
import { readWitness } from './witness.ts'

const MARK = 'damage-found.json'

/** Notes that a full check found damage, so that the file isn't opened as if it were sound. */
export function markDamaged(folder: string, at: string): void {
  try {
    writeWhole(join(folder, MARK), `${JSON.stringify({ found: at })}\n`)
  } catch {
    // A disk that takes no mark: whoever asked is told of the damage all the same.
  }
}

export function clearDamaged(folder: string): void {
  rmSync(join(folder, MARK), { force: true })
}

const same = (a: Uint8Array, b: Uint8Array) => Buffer.compare(a, b) === 0

/** @returns in a word what is wrong; null where nothing was found */
export function quickCheck(folder: string, keys: Keys, log: Log): 'found-before' | 'chain' | 'tail' | null {
  if (existsSync(join(folder, MARK))) return 'found-before'
  const [last, before] = log.last()
  if (last) {
    const linked = hashOf(before?.hash ?? FIRST, envelopeOf(last), last.digest)
    if (!same(linked, last.hash)) return 'chain'
    if (last.body && last.salt && !same(digestOf(last.salt, last.body), last.digest)) return 'chain'
  }
  const witness = readWitness(folder, keys)
  if (witness === null || witness === 'unreadable') return null
  return log.hashAt(witness.device, witness.sequence) === witness.head ? null : 'tail'
}
