import { z } from 'zod'
import type { StreamKind } from './chain.ts'

/** What every event says of itself; the rest is its kind's. */
export interface Body {
  readonly kind: string
}

export interface EventKind<B extends Body = Body> {
  readonly stream: StreamKind
  readonly kind: string
  readonly version: number
  readonly body: z.ZodType<B>
}

/** Declares a kind of event. `make` gives a body of it with its data checked by the compiler. */
export function eventKind<K extends string, S extends z.ZodRawShape>(of: {
  readonly stream: 'client' | 'clinic'
  readonly kind: K
  readonly version: number
  readonly says: S
}) {
  const says = z.strictObject(of.says)
  const body = z.strictObject({ kind: z.literal(of.kind), ...of.says })
  return {
    stream: of.stream,
    kind: of.kind,
    version: of.version,
    body: body as unknown as z.ZodType<{ kind: K } & z.infer<typeof says>>,
    make: (data: z.infer<typeof says>): { kind: K } & z.infer<typeof says> => ({ kind: of.kind, ...data }),
  }
}
