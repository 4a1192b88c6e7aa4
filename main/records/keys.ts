/**
 * `keys.json` beside the records: who this device is, and the secrets that open its file. The secrets are
 * sealed: `open` means that they stand there readable; a passphrase will wrap the same secrets later, so
 * nothing about the records has to be converted then.
 *
 * The device's private key stands here and not in the records file on purpose: a copy of the file restored on
 * another machine must become a device of its own there, or two machines would go on with one chain.
 */
import { createPrivateKey, createPublicKey, generateKeyPairSync, randomBytes, sign } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { Refused } from '../contract/procedure.ts'
import { writeWhole } from './whole-file.ts'

const base64 = z.base64()
const secrets = z.strictObject({
  /** 32 bytes: the key of the records file. */
  data: base64,
  /** The device's Ed25519 private key, PKCS #8 DER. */
  device: base64,
})
const keysFile = z.strictObject({
  keys: z.literal(1),
  device: z.uuid(),
  seal: z.strictObject({ kind: z.literal('open') }),
  secrets,
})

export interface Keys {
  readonly device: string
  /** The device's Ed25519 public key, SPKI DER, base64. */
  readonly publicKey: string
  readonly data: Buffer
  /** The device's Ed25519 signature: 64 bytes. */
  sign(bytes: Uint8Array): Buffer
}

const NAME = 'keys.json'

function keysFrom(file: z.infer<typeof keysFile>): Keys {
  const data = Buffer.from(file.secrets.data, 'base64')
  if (data.length !== 32) throw new RangeError('The data key has 32 bytes.')
  const key = createPrivateKey({
    key: Buffer.from(file.secrets.device, 'base64'),
    format: 'der',
    type: 'pkcs8',
  })
  const publicKey = createPublicKey(key).export({ format: 'der', type: 'spki' }).toString('base64')
  return { device: file.device, publicKey, data, sign: (bytes) => sign(null, bytes, key) }
}

/**
 * @returns the keys, or null where there is no file
 * @throws Refused `records.keys-unreadable` where there is one that says no keys
 */
export function readKeys(folder: string): Keys | null {
  const path = join(folder, NAME)
  let text: string
  try {
    text = readFileSync(path, 'utf8')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw new Refused('records.keys-unreadable', { path })
  }
  try {
    return keysFrom(keysFile.parse(JSON.parse(text)))
  } catch {
    throw new Refused('records.keys-unreadable', { path })
  }
}

/** A device of its own that opens the same file: with another id and another key to sign by. */
export function newDevice({ data }: Pick<Keys, 'data'>, device: string): NewKeys {
  const pair = generateKeyPairSync('ed25519')
  const file: z.infer<typeof keysFile> = {
    keys: 1,
    device,
    seal: { kind: 'open' },
    secrets: {
      data: data.toString('base64'),
      device: pair.privateKey.export({ format: 'der', type: 'pkcs8' }).toString('base64'),
    },
  }
  return { ...keysFrom(file), text: `${JSON.stringify(file, null, 2)}\n` }
}

/** Keys that are not on disk yet. */
interface NewKeys extends Keys {
  readonly text: string
}

/** They are on disk, readable by the owner only, before this returns. */
export function writeKeys(folder: string, { text }: NewKeys): void {
  writeWhole(join(folder, NAME), text)
}

/** Makes the keys of a new folder. */
export function makeKeys(folder: string, device: string): Keys {
  const keys = newDevice({ data: randomBytes(32) }, device)
  writeKeys(folder, keys)
  return keys
}
