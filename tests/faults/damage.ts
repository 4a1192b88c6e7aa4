/** Records that are damaged on purpose, and what opening and verifying then say. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { Refused } from '../../main/contract/procedure.ts'
import { folder, furnished, give, open, quietly } from '../records/clinic.ts'
import { raw } from '../records/raw-file.ts'
import { drawn } from './drawn.ts'

export const PAGE = 4096
/** Records of several tests, closed. */
export function kept(tests: number) {
  const at = folder()
  const records = open(at)
  const { user, client, administration } = furnished(records)
  for (let test = 1; test < tests; test += 1) {
    const { administration: other } = furnished(records)
    give(records, other, [{ kind: 'noted', text: 'x'.repeat(600) }], user)
  }
  records.close()
  return { at, client, administration, database: readFileSync(join(at, 'records.db')) }
}

type Row = Readonly<Record<string, unknown>>
export const rowsOf = (at: string) =>
  raw(at, (database) => database.prepare('SELECT * FROM event ORDER BY device, sequence').all()) as Row[]

/** Another folder with the same files. */
export function copied(at: string): string {
  const copy = folder()
  cpSync(at, copy, { recursive: true })
  return copy
}

/** Opens and verifies. @returns what was found; empty where all is sound */
export async function found(at: string): Promise<readonly string[]> {
  try {
    const records = open(at, { examines: true })
    const { problems } = await records.verify(quietly)
    records.close()
    return problems.map(({ code }) => code)
  } catch (error) {
    if (error instanceof Refused) return [error.fault.code]
    throw error
  }
}

/** Flips one bit in so many places, drawn by a seed, and holds that each is found or changed nothing. */
export async function flipped(places: number): Promise<{ found: number; harmless: number }> {
  const { at, database } = kept(6)
  const rows = JSON.stringify(rowsOf(at))
  const copy = copied(at)
  const random = drawn(11)
  const told = { found: 0, harmless: 0 }
  for (let place = 0; place < places; place += 1) {
    const bytes = Buffer.from(database)
    const byte = Math.floor(random() * bytes.length)
    bytes[byte] = (bytes[byte] ?? 0) ^ (1 << Math.floor(random() * 8))
    writeFileSync(join(copy, 'records.db'), bytes)
    if ((await found(copy)).length > 0) {
      told.found += 1
      continue
    }
    expect([byte, JSON.stringify(rowsOf(copy)) === rows]).toEqual([byte, true])
    told.harmless += 1
  }
  return told
}
