import type { Protocol } from '../../../protocols/language/model.ts'

/** All that a paper form is made of. The same input gives the same bytes. */
export interface FormInput {
  readonly protocol: Protocol
  /** Fingerprint of the protocol's text, so that a filled-in form can be told to belong to it. */
  readonly hash: string
  /** The moment it is made, RFC 3339 with offset. */
  readonly now: string
}
