import { z } from 'zod'

/** The sides, and so the ids that the list `hands` has in every protocol. */
export const SIDES = ['right', 'left'] as const
const side = z.enum(SIDES)
export type Side = z.infer<typeof side>
export const otherSide = (of: Side): Side => (of === 'right' ? 'left' : 'right')

/** A civil date, `YYYY-MM-DD`, without clock or zone. */
export const civilDate = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/)

/**
 * When somebody was born, as exactly as it is known: nothing is filled in. `told` is an age in completed
 * years that somebody stated on a date.
 */
const birth = z.discriminatedUnion('known', [
  z.strictObject({ known: z.literal('date'), date: civilDate }),
  z.strictObject({
    known: z.literal('month'),
    year: z.int().min(1850).max(2200),
    month: z.int().min(1).max(12),
  }),
  z.strictObject({ known: z.literal('year'), year: z.int().min(1850).max(2200) }),
  z.strictObject({ known: z.literal('told'), years: z.int().min(0).max(130), on: civilDate }),
  z.strictObject({ known: z.literal('no') }),
])
export type Birth = z.infer<typeof birth>

const sex = z.enum(['F', 'M', 'unknown'])
const handedness = z.enum(['right', 'left', 'mixed', 'not_settled', 'unknown'])

/** What is known of one arm. `less_affected` is for clients whose both arms are affected. */
const armStatus = z.enum(['unaffected', 'affected', 'less_affected', 'absent', 'unknown'])
const restriction = z.strictObject({
  what: z.string().min(1).max(500),
  setBy: z.string().max(200),
  until: civilDate.nullable(),
})
const arm = z.strictObject({
  status: armStatus,
  condition: z.string().max(500),
  since: z.string().max(100),
  absentPart: z.string().max(200),
  restrictions: z.array(restriction).max(20),
})
export type Arm = z.infer<typeof arm>

/**
 * The facts about a client that an administration needs and keeps: no name, no number. Order, norms and
 * comparison rest on these alone.
 */
export const clientFacts = z.strictObject({
  birth,
  sex,
  dominantBefore: handedness,
  usedNow: handedness,
  arms: z.strictObject({ right: arm, left: arm }),
  schoolingYears: z.number().min(0).max(40).nullable(),
})
export type ClientFacts = z.infer<typeof clientFacts>

const UNKNOWN_ARM: Arm = { status: 'unknown', condition: '', since: '', absentPart: '', restrictions: [] }

/** Facts of a client of whom nothing is known: what a rehearsal starts from. */
export const NOTHING_KNOWN: ClientFacts = {
  birth: { known: 'no' },
  sex: 'unknown',
  dominantBefore: 'unknown',
  usedNow: 'unknown',
  arms: { right: UNKNOWN_ARM, left: UNKNOWN_ARM },
  schoolingYears: null,
}

/** A client's profile: needs only a name or a clinic number. Any other field may be empty. */
export const profile = z.strictObject({
  name: z.string().max(200),
  number: z.string().max(100),
  secondIdentifier: z.string().max(200),
  facts: clientFacts,
  language: z.string().max(100),
  interpreter: z.string().max(200),
  sight: z.string().max(200),
  hearing: z.string().max(200),
  speech: z.string().max(200),
  neglect: z.string().max(200),
  agreement: z.strictObject({
    given: z.enum(['yes', 'no', 'unknown']),
    by: z.string().max(200),
    on: civilDate.nullable(),
  }),
})
export type Profile = z.infer<typeof profile>
