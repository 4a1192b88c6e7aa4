/**
 * Seals: a device's signature over the head of its chain. Each hash holds the one before, so a signed head vouches
 * for every event up to it: none can be changed, left out, put in or moved without the head being another.
 *
 * What is signed never changes, for seals of today must verify in twenty years:
 *
 *     "seal 1" ‖ line feed ‖ RFC 8785 JSON of { device, head, sequence }
 */
import { verify } from 'node:crypto'
import { canonicalText } from './canonical.ts'

/** How far a device's chain had come: the sequence number and the hash, in hex, of its last event then. */
export interface Head {
  readonly device: string
  readonly sequence: number
  readonly head: string
}

export function sealBytes({ device, sequence, head }: Head): Buffer {
  return Buffer.from(`seal 1\n${canonicalText({ device, head, sequence })}`, 'utf8')
}

/** @param publicKey SPKI DER, base64  @returns whether the signature (base64) is that key's over the head */
export function isSignedBy(publicKey: string, of: Head, signature: string): boolean {
  try {
    const key = { key: Buffer.from(publicKey, 'base64'), format: 'der', type: 'spki' } as const
    return verify(null, sealBytes(of), key, Buffer.from(signature, 'base64'))
  } catch {
    // A key that is none signs nothing.
    return false
  }
}

/** Crockford's base 32: no letter that is read as a digit. */
const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const GROUPS = 4
const PER_GROUP = 4

/**
 * A head in short, for paper: its first 80 bits in four groups, such as `7K2M-04QX-9TZB-HC31`. Two heads that
 * share one are not to be found by trying.
 */
export function sealCode(head: string): string {
  const bits = BigInt(`0x${head}`) >> BigInt(256 - 5 * GROUPS * PER_GROUP)
  const digits = Array.from({ length: GROUPS * PER_GROUP }, (_, index) => {
    const shift = BigInt(5 * (GROUPS * PER_GROUP - 1 - index))
    return DIGITS[Number((bits >> shift) & 31n)]
  }).join('')
  return digits.match(/.{4}/g)?.join('-') ?? ''
}

/** A code as somebody has typed it off a page: small letters, other dashes, and the letters taken for digits. */
export function readSealCode(typed: string): string | null {
  const plain = typed
    .toUpperCase()
    .replace(/[\s\p{Dash_Punctuation}]/gu, '')
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1')
  if (plain.length !== GROUPS * PER_GROUP || [...plain].some((digit) => !DIGITS.includes(digit))) return null
  return plain.match(/.{4}/g)?.join('-') ?? null
}
