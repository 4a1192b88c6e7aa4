/** Who did what, in names: events keep the ids of users and clients, people read names. */
import type { Correction, Trial } from '../../protocols/runner/view.ts'
import type { Clinic } from './clinic.ts'

interface By {
  readonly by: string
}

/** What is put right and done otherwise in an administration, each with who did it. */
interface Signable {
  readonly trials: readonly Trial[]
  readonly deviations: readonly By[]
  readonly corrections: readonly Correction[]
  readonly stops?: readonly By[]
  readonly remarks?: readonly By[]
  readonly pauses?: readonly By[]
  readonly raters?: readonly { readonly later: readonly By[] }[]
}

/**
 * A result or a view with the names of users in place of their ids. Of clients only the one whose record this is now
 * is named: another one's name never stands in it, and there the correction has no words.
 */
export function signed<Of extends Signable>(
  { stores: { records } }: Clinic,
  client: string | null,
  of: Of,
): Of {
  const byName = <One extends By>(one: One): One => ({
    ...one,
    by: records.read.user(one.by)?.name ?? one.by,
  })
  const clientName = (id: string): string => {
    if (id !== client) return ''
    const { name = '', number = '' } = records.read.client(id)?.profile ?? {}
    return name || number
  }
  const correction = (one: Correction): Correction =>
    one.code === 'client' ? { ...one, first: clientName(one.first), now: clientName(one.now) } : one
  return {
    ...of,
    trials: of.trials.map((trial) => (trial.void ? { ...trial, void: byName(trial.void) } : trial)),
    deviations: of.deviations.map(byName),
    corrections: of.corrections.map(correction).map(byName),
    ...(of.stops && { stops: of.stops.map(byName) }),
    ...(of.remarks && { remarks: of.remarks.map(byName) }),
    ...(of.pauses && { pauses: of.pauses.map(byName) }),
    ...(of.raters && { raters: of.raters.map((each) => ({ ...each, later: each.later.map(byName) })) }),
  }
}
