/**
 * How a call between screen and host is declared. One declaration gives both sides their types and both their
 * checks; who calls is known from the host's session and is never part of a call.
 */
import { z } from 'zod'
import type { FaultCode } from './faults.ts'

/** Who may make a call. For now every chosen user may; roles come later without touching the calls. */
export type Needs = 'nobody' | 'user'

export interface Procedure<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> {
  readonly needs: Needs
  /** True when the answer shows a client's record: such calls are what an audit must list. */
  readonly showsClient: boolean
  readonly input: I
  readonly output: O
  /** True when the call reports progress and can be stopped. */
  readonly long?: boolean
}

/** Keeps what was declared to the letter, so that a handler's user is known to be somebody where one is needed. */
export function procedure<I extends z.ZodType, O extends z.ZodType, const N extends Needs>(
  of: Procedure<I, O> & { readonly needs: N },
): Procedure<I, O> & { readonly needs: N } {
  return of
}

/** An error as it crosses: a code that the words files have a sentence and a mend for, and its values. */
const fault = z.strictObject({
  code: z.string(),
  detail: z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])),
})
export type Fault = z.infer<typeof fault>

export const reply = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), fault }),
])
export type Reply = z.infer<typeof reply>

/** A handler's way to refuse: becomes the reply's fault. Anything else thrown is a defect of ours. */
export class Refused extends Error {
  readonly fault: Fault
  constructor(code: FaultCode | `records.${string}` | `reports.${string}`, detail: Fault['detail'] = {}) {
    super(code)
    this.fault = { code, detail }
  }
}
