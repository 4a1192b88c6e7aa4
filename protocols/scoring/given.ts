/** An administration as results need it: what its record says, without what is worked out. */
import type { Administration } from '../runner/administration.ts'
import { listOf } from '../runner/grown.ts'
import type { Given } from './build-result.ts'

/** @throws Error where nothing was opened: there is no administration yet */
export function givenOf(id: string, { snapshot }: Administration): Given {
  const { opened, openedAt, finishedAt, on, examiner, deviations, corrections, clock } = snapshot.context
  if (opened === null) throw new Error('The administration was never opened.')
  return {
    id,
    protocol: opened.protocol,
    on,
    startedAt: openedAt,
    finishedAt,
    examiner,
    rehearsal: opened.rehearsal,
    deviations: listOf(deviations),
    corrections: listOf(corrections),
    clock: clock === null ? null : { resolutionMs: clock.resolutionMs, isolated: clock.isolated },
  }
}
