/** What `score` and `rehearse` say of an administration's events: every score with unit, trials and norms. */
import { z } from 'zod'
import type { Recorded } from '../../../protocols/runner/events.ts'
import { runnerFor } from '../../../protocols/runner/index.ts'
import { buildResult } from '../../../protocols/scoring/build-result.ts'
import { givenOf } from '../../../protocols/scoring/given.ts'
import { type Result, type ScoreValue, scoreValue, timing } from '../../../protocols/scoring/result.ts'
import { uncertaintyNotes } from '../../../protocols/scoring/uncertainty/notes.ts'
import { trial } from '../../../protocols/runner/view.ts'
import { HostProblem } from '../problem.ts'
import { say } from '../words.ts'
import type { FoundProtocol } from './find-protocol.ts'
import {
  changeLines,
  definitionLines,
  normLines,
  otherHandLines,
  tellAmount,
  tellMeasured,
  tellPlace,
  tellReason,
} from './tell.ts'

export const scoredShape = z.strictObject({
  protocol: z.strictObject({ id: z.string(), version: z.string(), hash: z.string() }),
  /** False where the administration was given by another text of the protocol than the one it is scored by. */
  sameProtocol: z.boolean(),
  on: z.string(),
  complete: z.boolean(),
  age: z.strictObject({ from: z.number(), to: z.number() }).nullable(),
  scores: z.array(scoreValue),
  /** The error of single times taken by hand; null where none was. */
  timing: timing.nullable(),
  /** Every trial, void and practice ones too. */
  trials: z.array(trial),
  /** Events that the protocol doesn't allow where they stand; they were left out. */
  refused: z.array(z.strictObject({ event: z.uuid(), kind: z.string(), code: z.string() })),
})
export type ScoredEvents = z.infer<typeof scoredShape>

/** @throws HostProblem where the events don't open an administration */
export function scoreEvents({ protocol, disk }: FoundProtocol, events: readonly Recorded[]): ScoredEvents {
  const runner = runnerFor(protocol)
  const { administration, refused } = runner.replay(events)
  const [first] = events
  if (!first || runner.view(administration, first.id).facts === null)
    throw new HostProblem('score.not_opened', {})
  const given = givenOf(first.id, administration)
  const standing = runner.standing(administration)
  const result: Result = buildResult({
    protocol,
    administration: given,
    standing,
    earlier: [],
    verified: new Map(),
  })
  return {
    protocol: { id: protocol.id, version: protocol.version, hash: disk.hash },
    sameProtocol: given.protocol.hash === disk.hash,
    on: result.on,
    complete: result.complete,
    age: result.age,
    scores: result.scores,
    timing: result.timing,
    trials: result.trials,
    refused: refused.map(({ event, refusal }) => ({
      event: event.id,
      kind: event.body.kind,
      code: refusal.refused,
    })),
  }
}

export function scoreLines(scored: ScoredEvents): readonly string[] {
  const { protocol, sameProtocol, on, complete, age, scores, refused } = scored
  const shown = scores.filter((score) => score.shown)
  return [
    say('score.head', {
      protocol: protocol.id,
      version: protocol.version,
      on,
      age: age === null ? 'none' : age.from === age.to ? String(age.from) : `${age.from}–${age.to}`,
    }),
    ...(sameProtocol ? [] : [say('score.other_text')]),
    ...(complete ? [] : [say('score.incomplete')]),
    ...shown.flatMap(linesOfScore),
    ...definitionLines(shown),
    ...uncertaintyNotes(shown, scored.timing).map(({ code, detail }) => say(`uncertainty.${code}`, detail)),
    ...refused.map((one) => say('score.refused', one)),
  ]
}

function linesOfScore(score: ScoreValue): readonly string[] {
  const { title, value, over, unit, decimals, missing, trials, uncertainty } = score
  const where = tellPlace(score.passes)
  const figure =
    value === null
      ? say('score.none', { reason: tellReason('missing', missing ?? NO_REASON) })
      : uncertainty === null
        ? tellAmount(value, decimals, unit, over)
        : tellMeasured(value, uncertainty.half, decimals, unit)
  return [
    `${title}${where ? ` (${where})` : ''}: ${figure}`,
    ...(value === null ? [] : [say('score.trials', { trials: trials.length }), ...otherHandLines(score)]),
    ...changeLines(score),
    ...normLines(score.norms, score),
  ]
}

/** No value, and nothing said of why. */
const NO_REASON = { code: 'null', detail: {} }
