/**
 * What is hashed, byte by byte. This never changes: records kept today must verify in twenty years.
 *
 *     digest = SHA-256( salt ‖ body )
 *     hash   = SHA-256( previous ‖ length ‖ envelope ‖ digest )
 *
 * - `salt`: 32 random bytes of the event's own.
 * - `body`: the event's body as RFC 8785 JSON, UTF-8.
 * - `previous`: the 32 bytes of the hash of the same device's event before, by its sequence number; 32 zero
 *   bytes for its first.
 * - `length`: how many bytes `envelope` has, four bytes, most significant first.
 * - `envelope`: the envelope as RFC 8785 JSON, UTF-8, with exactly the members of `Envelope` below.
 *
 * All parts but body and envelope have a fixed length and those two stand last or behind their length, so no
 * two different events give the same bytes. Body and salt may be erased: `digest` stays, and so the chain still
 * verifies, while without the salt nobody can find out by guessing what the body said.
 */
import { hash } from 'node:crypto'
import { canonicalText } from './canonical.ts'

/** The kinds of stream: what an event is about. */
export type StreamKind = 'client' | 'administration' | 'clinic'

/** All that an event is apart from what it says. */
export interface Envelope {
  /** UUIDv7. */
  readonly id: string
  /** Id of the device that wrote it, and the how-manieth event of that device it is, from 1. */
  readonly device: string
  readonly sequence: number
  /** Hybrid logical clock, sixteen hex digits: the order of events across devices. */
  readonly clock: string
  /** Id of the user who did it; the nil UUID where the program itself did. */
  readonly user: string
  readonly stream: { readonly kind: StreamKind; readonly id: string }
  readonly kind: string
  readonly version: number
  /** Wall time, RFC 3339 with the offset that stood when it happened. */
  readonly at: string
}

export const SALT_BYTES = 32
export const FIRST = Buffer.alloc(32)

export function bodyBytes(body: unknown): Buffer {
  return Buffer.from(canonicalText(body), 'utf8')
}

/** The envelope's RFC 8785 bytes, its members written in the order that sorting them gives. */
export function envelopeBytes(of: Envelope): Buffer {
  const { at, clock, device, id, kind, sequence, user, version } = of
  const stream = { id: of.stream.id, kind: of.stream.kind }
  return Buffer.from(JSON.stringify({ at, clock, device, id, kind, sequence, stream, user, version }), 'utf8')
}

const sha256 = (...parts: readonly Uint8Array[]): Buffer => hash('sha256', Buffer.concat(parts), 'buffer')

export function digestOf(salt: Uint8Array, body: Uint8Array): Buffer {
  return sha256(salt, body)
}

export function hashOf(previous: Uint8Array, envelope: Envelope, digest: Uint8Array): Buffer {
  const bytes = envelopeBytes(envelope)
  const length = Buffer.alloc(4)
  length.writeUInt32BE(bytes.length)
  return sha256(previous, length, bytes, digest)
}
