/** What `score` and `rehearse` say of an administration's events: every score with unit, trials and norms. */
import { z } from 'zod'
import type { Recorded } from '../../../protocols/runner/events.ts'
import { runnerFor } from '../../../protocols/runner/index.ts'
import { buildResult } from '../../../protocols/scoring/build-result.ts'
import { givenOf } from '../../../protocols/scoring/given.ts'
import {
  type NormComparison,
  type NormFigures,
  type Result,
  type ScoreValue,
  scoreValue,
} from '../../../protocols/scoring/result.ts'
import { trial } from '../../../protocols/runner/view.ts'
import { shownValue } from '../../../protocols/scoring/rounding.ts'
import { HostProblem } from '../problem.ts'
import { say } from '../words.ts'
import type { FoundProtocol } from './find-protocol.ts'

export const scoredShape = z.strictObject({
  protocol: z.strictObject({ id: z.string(), version: z.string(), hash: z.string() }),
  /** False where the administration was given by another text of the protocol than the one it is scored by. */
  sameProtocol: z.boolean(),
  on: z.string(),
  complete: z.boolean(),
  age: z.strictObject({ from: z.number(), to: z.number() }).nullable(),
  scores: z.array(scoreValue),
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
    trials: result.trials,
    refused: refused.map(({ event, refusal }) => ({
      event: event.id,
      kind: event.body.kind,
      code: refusal.refused,
    })),
  }
}

export function scoreLines({ sameProtocol, complete, scores, refused }: ScoredEvents): readonly string[] {
  return [
    ...(sameProtocol ? [] : [say('score.other_text')]),
    ...(complete ? [] : [say('score.incomplete')]),
    ...scores.filter(({ shown }) => shown).flatMap(linesOfScore),
    ...refused.map((one) => say('score.refused', one)),
  ]
}

function linesOfScore(score: ScoreValue): readonly string[] {
  const { title, passes, value, over, unit, decimals, missing, trials } = score
  const where = passes.map(({ id, number }) => id ?? String(number)).join(', ')
  const figure =
    value === null
      ? say('score.none', { code: missing?.code ?? '' })
      : `${over ? '≥ ' : ''}${shownValue(value, decimals)} ${unit}`
  const head = `${title}${where ? ` (${where})` : ''}: ${figure}`
  return [
    head,
    ...(value === null ? [] : [say('score.trials', { trials: trials.length })]),
    ...normLines(score.norms, decimals),
  ]
}

/** The rows of every norm table that was looked at, or why there is none. */
export function normLines(norms: ScoreValue['norms'], decimals: number): readonly string[] {
  return norms.flatMap(({ title, standing, status, caution, strata }) => [
    say('norm.head', { title, standing, status }),
    ...strata.map((stratum) => stratumLine(stratum, decimals)),
    ...caution.map(({ code }) => say('norm.caution', { code })),
  ])
}

type Stratum = NormComparison['strata'][number]

const shown = (value: number | null, decimals: number): string =>
  value === null ? '–' : shownValue(value, decimals)

function stratumLine(stratum: Stratum, decimals: number): string {
  const { sex, ageMin, ageMax, hand, n, mean, sd, line, percentile, percentileInterval, definition } = stratum
  const whom = { sex, hand, line, n: n ?? '?', ages: `${ageMin ?? ''}–${ageMax ?? ''}` }
  if (stratum.figures === null)
    return say('norm.row', {
      ...whom,
      definition,
      mean: shown(mean, decimals),
      sd: sd === null ? '?' : shownValue(sd, decimals),
      z: shown(stratum.z, 2),
      percentile: shown(percentile, 1),
      interval: percentileInterval ? percentileInterval.map((end) => shownValue(end, 1)).join('–') : '–',
    })
  const chosen = Object.entries(stratum.chosenBy).map((cell) => cell.join(' '))
  return say('norm.whom', {
    ...whom,
    chosen: chosen.join(', ') || 'none',
    figures: figuresText(stratum, stratum.figures, decimals),
  })
}

function figuresText(stratum: Stratum, figures: NormFigures, decimals: number): string {
  const rank = shown(stratum.percentile, 1)
  switch (figures.statistic) {
    case 'percentiles': {
      const [under, over] = [figures.under, figures.over].map((one) => shown(one?.value ?? null, decimals))
      const beyond = figures.beyond ?? { side: 'none', rank: 0 }
      return say('norm.percentiles', {
        percentile: rank,
        beyond: beyond.side,
        rank: beyond.rank,
        under: under ?? '–',
        over: over ?? '–',
      })
    }
    case 'lms':
      return say('norm.lms', {
        l: String(figures.l),
        m: shownValue(figures.m, decimals + 1),
        s: String(figures.s),
        z: shown(stratum.z, 2),
        percentile: rank,
      })
    case 'cut-offs':
      return say('norm.cut_offs', {
        side: figures.side,
        cut: shownValue(figures.cut, decimals),
        band: figures.band,
      })
    case 'bands':
      return figures.band === null ? say('norm.no_band') : say('norm.bands', { band: figures.band })
  }
}
