/** What seals say of the chain: each is the device's own over the head it names, and nothing sealed is gone. */
import type { EventRow, Log } from './log.ts'
import { isSignedBy } from './seal.ts'
import type { VerifyProblem } from './verify.ts'
import type { readWitness } from './witness.ts'

/** The public keys by which seals are judged. */
export interface SealKeys {
  /** This device's own, from its keys and not from the records that are judged. */
  readonly own: { readonly device: string; readonly publicKey: string }
  readonly witness: ReturnType<typeof readWitness>
}

const bodyOf = (row: EventRow): Readonly<Record<string, unknown>> =>
  JSON.parse(Buffer.from(row.body ?? '{}').toString('utf8'))

/** Judges the seals of a log, event by event, each device's in its own sequence. */
export function sealsOf({ own, witness }: SealKeys) {
  const keys = new Map([[own.device, own.publicKey]])
  return {
    /** @param before the event before it in its device's chain, as it is stored */
    problems(
      row: EventRow,
      before: { readonly sequence: number; readonly hash: Uint8Array },
    ): VerifyProblem[] {
      if (!row.body || (row.kind !== 'device-added' && row.kind !== 'administration-sealed')) return []
      const body = bodyOf(row)
      if (row.kind === 'device-added') {
        // The first word counts: a key that is put in later changes nothing.
        if (body['device'] === row.device && !keys.has(row.device)) {
          keys.set(row.device, String(body['publicKey']))
        }
        return []
      }
      const head = {
        device: row.device,
        sequence: before.sequence,
        head: Buffer.from(before.hash).toString('hex'),
      }
      const holds =
        body['sequence'] === head.sequence &&
        body['head'] === head.head &&
        isSignedBy(keys.get(row.device) ?? '', head, String(body['signature']))
      return holds
        ? []
        : [{ code: 'seal', event: row.id, detail: { device: row.device, sequence: row.sequence } }]
    },
    /** What is missing at the end of this device's chain. */
    atEnd(log: Log): VerifyProblem[] {
      if (witness === null) return []
      if (witness === 'unreadable') return [{ code: 'witness', event: null, detail: {} }]
      const { device, sequence, head } = witness
      if (log.hashAt(device, sequence) === head) return []
      return [{ code: 'tail', event: null, detail: { device, sequence, found: log.head()?.sequence ?? 0 } }]
    },
  }
}
