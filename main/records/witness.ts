/**
 * `sealed.json` beside the records: how far this device's chain had come when it was last sealed or closed, signed.
 * It stands outside the file, so that a file whose end was cut off, or an older copy that was put in its place, is
 * found out. One that can't be written is no harm to the records: the next one tells the same and more.
 */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import type { Keys } from './keys.ts'
import { type Head, isSignedBy, sealBytes } from './seal.ts'
import { writeWhole } from './whole-file.ts'

const witness = z.strictObject({
  sealed: z.literal(1),
  device: z.uuid(),
  sequence: z.int().min(1),
  head: z.string().regex(/^[0-9a-f]{64}$/),
  signature: z.base64(),
})

const WITNESS = 'sealed.json'

export function writeWitness(folder: string, keys: Keys, of: Omit<Head, 'device'>): void {
  const head: Head = { device: keys.device, ...of }
  const signature = keys.sign(sealBytes(head)).toString('base64')
  const text: z.infer<typeof witness> = { sealed: 1, ...head, signature }
  try {
    writeWhole(join(folder, WITNESS), `${JSON.stringify(text)}\n`)
  } catch {
    // Full disk: what it would have told is on disk already, and only the check for a lost end stays older.
  }
}

/**
 * What was witnessed of this device's chain.
 * @returns null where there is none, or one of another device; `unreadable` where it is not what this device signed
 */
export function readWitness(folder: string, { device, publicKey }: Keys): Head | 'unreadable' | null {
  const path = join(folder, WITNESS)
  if (!existsSync(path)) return null
  try {
    const { signature, sealed: _, ...head } = witness.parse(JSON.parse(readFileSync(path, 'utf8')))
    if (head.device !== device) return null
    return isSignedBy(publicKey, head, signature) ? head : 'unreadable'
  } catch {
    return 'unreadable'
  }
}
