/** What has to be said once beside values that come of hand-taken times: codes with what their sentences need. */
import type { Result, ScoreValue } from '../result.ts'

export const UNCERTAINTY_NOTES = {
  /** What ± is, and what it isn't. */
  error: ['from', 'source'],
  /** Unlike ends make every time too long or too short by about so many seconds. */
  bias: ['start', 'stop', 'seconds'],
  /** The protocol doesn't tell what begins or ends a time. */
  bias_unknown: [],
  /** Values whose uncertainty is more than a twentieth of them. */
  short: ['count', 'scores'],
} as const satisfies Readonly<Record<string, readonly string[]>>

export interface UncertaintyNote {
  readonly code: keyof typeof UNCERTAINTY_NOTES
  readonly detail: Readonly<Record<string, string | number>>
}

/** A bias that is less than this part of the uncertainty, as in a ratio of two times, says nothing. */
const WORTH_TELLING = 0.1

export function uncertaintyNotes(
  scores: readonly ScoreValue[],
  timing: Result['timing'],
): readonly UncertaintyNote[] {
  const found = scores.flatMap(({ title, uncertainty }) =>
    uncertainty === null ? [] : [{ title, ...uncertainty }],
  )
  if (found.length === 0 || timing === null) return []
  const { from, source, reaction } = timing.examiner
  const biased = found.filter(({ bias, half }) => bias !== null && Math.abs(bias) > WORTH_TELLING * half)
  const ends = Map.groupBy(biased, ({ start, stop }) => `${start ?? 'both'} ${stop ?? 'both'}`)
  const short = [...new Set(found.filter(({ isLarge }) => isLarge).map(({ title }) => title))]
  return [
    { code: 'error', detail: { from, source } },
    ...[...ends.keys()].map((key): UncertaintyNote => {
      const [start = '', stop = ''] = key.split(' ')
      return { code: 'bias', detail: { start, stop, seconds: reaction } }
    }),
    ...(found.some(({ bias }) => bias === null) ? [{ code: 'bias_unknown' as const, detail: {} }] : []),
    ...(short.length > 0
      ? [{ code: 'short' as const, detail: { count: short.length, scores: short.join(', ') } }]
      : []),
  ]
}
