/** What one administration's result says: worked out anew from its trials each time, nothing of it is stored. */
import { type AgeRange, ageOn, isBornAfter } from '../age.ts'
import { type Side, SIDES } from '../client.ts'
import type { Item, Protocol, Text, Wording } from '../language/model.ts'
import { textOf, wordingFor } from '../language/words.ts'
import type { Correction, Deviation, Pass } from '../runner/view.ts'
import { changeSince, type Earlier, errorsHere, type Manner } from './change.ts'
import { chosenHere } from './choosing.ts'
import { conditionHere } from './gathered.ts'
import { compareWithNorm } from './norms.ts'
import { otherHandOf } from './other-hand.ts'
import { listOf, type Outline, outlineOf } from './outline.ts'
import type { Result, ScoreValue } from './result.ts'
import { scopeAt, type Standing } from './scope.ts'
import { type Scored, scoreAll } from './scores.ts'
import { dominantSide } from './sides.ts'
import { type ExaminerTiming, PUBLISHED_TIMING } from './uncertainty/examiner-timing.ts'
import {
  type MeasuringGround,
  type MeasuringUncertainty,
  timesOf,
  uncertaintyBeside,
  uncertaintyOf,
} from './uncertainty/of-scores.ts'

/** An administration as its record has it, without what is worked out. */
export interface Given {
  readonly id: string
  readonly protocol: {
    readonly id: string
    readonly version: string
    readonly hash: string
    readonly language: string
    readonly wording: string | null
    readonly from: 'library' | 'clinic'
  }
  /** Civil date of the administration. */
  readonly on: string
  readonly startedAt: string
  readonly finishedAt: string | null
  readonly examiner: string
  readonly rehearsal: boolean
  readonly deviations: readonly Deviation[]
  readonly corrections: readonly Correction[]
  readonly clock: Result['clock']
}

export interface ResultParts {
  readonly protocol: Protocol
  readonly administration: Given
  readonly standing: Standing
  /** Earlier administrations of this protocol to this client, in any order. */
  readonly earlier: readonly Earlier[]
  /** Norm name to the person of the clinic who verified its table. */
  readonly verified: ReadonlyMap<string, string>
  /** The examiner's own error of pressing, where it was measured; left out: published figures. */
  readonly examinerTiming?: ExaminerTiming
}

interface Building extends ResultParts {
  readonly outline: Outline
  readonly all: readonly Scored[]
  readonly age: AgeRange | null
  readonly manner: Manner
  readonly measuring: MeasuringGround
  measured(scored: Scored): MeasuringUncertainty | null
  say(text: Text): string
}

/** How an administration was given, for comparing it with another. */
const mannerOf = ({ protocol, examiner, deviations }: Given, standing: Standing): Manner => ({
  version: protocol.version,
  wording: protocol.wording,
  examiner,
  conditions: Object.fromEntries(conditionsOf(standing).map(({ name, value }) => [name, value])),
  deviations: deviations.filter(({ norms }) => norms !== 'kept').length,
})

/** An administration as later ones see it. */
export const earlierOf = (administration: Given, standing: Standing): Earlier => ({
  administration: administration.id,
  on: administration.on,
  manner: mannerOf(administration, standing),
  scores: scoreAll(standing).map(({ score, place, value, over }) => ({
    score: score.name,
    place,
    value,
    over,
    unit: score.unit,
  })),
})

export function buildResult(parts: ResultParts): Result {
  const { protocol, administration, standing } = parts
  const { on } = administration
  const wording: Wording = wordingFor(protocol, administration.protocol.wording)
  const measuring = measuringGround(parts)
  const building: Building = {
    ...parts,
    outline: outlineOf(protocol),
    all: scoreAll(standing),
    age: ageOn(standing.facts.birth, on),
    manner: mannerOf(administration, standing),
    measuring,
    measured: measuredOnce(measuring),
    say: (text) => textOf(protocol, wording, text),
  }
  const { id, startedAt, finishedAt, examiner, rehearsal, deviations, corrections, clock } = administration
  return {
    administration: id,
    protocol: { ...administration.protocol, title: building.say(protocol.title) },
    on,
    startedAt,
    finishedAt,
    examiner,
    rehearsal,
    complete: finishedAt !== null && !standing.isWithdrawn && !standing.trials.some(isCutOff),
    age: building.age,
    scores: building.all.map((scored) => scoreValue(scored, building)),
    trials: [...standing.trials],
    happenings: happeningsOf(building),
    deviations: [...deviations],
    corrections: [...corrections],
    conditions: conditionsOf(standing).map(({ name, value, text }) => ({
      name,
      value,
      text: text === null ? null : building.say(text),
    })),
    clock,
    timing: timingOf(building.measuring),
    cautions: protocol.cautions.map(building.say),
    sources: protocol.sources.map(({ id: source, cite, seen, note }) => ({ id: source, cite, seen, note })),
  }
}

const measuringGround = ({ standing, administration, examinerTiming = PUBLISHED_TIMING }: ResultParts) => ({
  standing,
  administration: administration.id,
  steps: outlineOf(standing.protocol).steps,
  examiner: examinerTiming,
  resolutionMs: administration.clock?.resolutionMs ?? null,
})

function timingOf(measuring: MeasuringGround): Result['timing'] {
  const times = timesOf(measuring)
  const halves = Object.values(times).flatMap((columns) => Object.values(columns))
  return halves.length === 0
    ? null
    : { times, pair: Math.SQRT2 * Math.max(...halves), examiner: { ...measuring.examiner } }
}

/** More of the value than this is worth a word. */
const LARGE = 0.05

function uncertainty(scored: Scored, { measured }: Building): ScoreValue['uncertainty'] {
  const found = measured(scored)
  return found === null ? null : { ...found, isLarge: found.half > LARGE * Math.abs(scored.value ?? 0) }
}

/** The uncertainty of each score, worked out once: it is asked for again beside the other hand. */
function measuredOnce(measuring: MeasuringGround): Building['measured'] {
  const known = new Map<Scored, MeasuringUncertainty | null>()
  return (scored) => {
    const before = known.get(scored)
    if (before !== undefined) return before
    const found = uncertaintyOf(scored, measuring)
    known.set(scored, found)
    return found
  }
}

function beside(one: Scored, other: Scored, { measured }: Building) {
  const [a, b] = [measured(one), measured(other)]
  if (a === null || b === null || one.value === null || other.value === null) return null
  return uncertaintyBeside(
    { value: one.value, half: a.half, trials: one.trials },
    { value: other.value, half: b.half, trials: other.trials },
  )
}

function happeningsOf({ protocol, standing, say }: Building): Result['happenings'] {
  const befell = new Set(
    standing.trials.flatMap((trial) => [...trial.happenings, trial.void?.happening ?? null]),
  )
  return protocol.happenings
    .filter(({ name }) => befell.has(name))
    .map(({ name, seen }) => ({ name, seen: say(seen).trim() }))
}

/** A trial that was due and never given, as opposed to one that was tried or closed for a reason. */
const isCutOff = ({ status, outcome }: Standing['trials'][number]): boolean =>
  status === 'standing' && (outcome === 'not_given' || outcome === 'stopped' || outcome === 'skipped')

const conditionsOf = ({ protocol, conditions }: Standing) =>
  protocol.conditions.flatMap((condition) => {
    const value = conditionHere(condition, conditions)
    const text = condition.options.find((option) => option.id === value)?.text ?? null
    return value === null ? [] : [{ name: condition.name, value, text }]
  })

function scoreValue(scored: Scored, building: Building): ScoreValue {
  const { score, place, value, over, missing, trials } = scored
  const { name, unit, decimals, better, shown } = score
  return {
    score: name,
    title: building.say(score.title),
    place,
    passes: score.each.map((loop) => passOf(loop, scored, building)),
    value,
    over,
    unit,
    decimals,
    better,
    shown,
    missing,
    uncertainty: uncertainty(scored, building),
    trials: [...trials],
    norms: normsOf(scored, building),
    otherHand: otherHand(scored, building),
    error: errorOf(scored, building),
    change: changesOf(scored, building),
  }
}

const handLoopOf = ({ score }: Scored, outline: Outline): string | null =>
  score.each.find((loop) => listOf(outline, loop) === 'hands') ?? null

function handOf(scored: Scored, outline: Outline): Side | null {
  const loop = handLoopOf(scored, outline)
  return SIDES.find((side) => loop !== null && side === scored.place[loop]) ?? null
}

function passOf(loop: string, { score, place }: Scored, building: Building): Pass {
  const { protocol, outline, all } = building
  const list = listOf(outline, loop)
  const pass = place[loop]
  const passes = [...new Set(all.filter((one) => one.score === score).map((one) => one.place[loop]))]
  const item = protocol.lists[list ?? '']?.find(({ id }) => id === pass)
  return {
    loop,
    list,
    id: typeof pass === 'string' ? pass : null,
    number: typeof pass === 'number' ? pass : passes.indexOf(pass) + 1,
    of: passes.length,
    text: item === undefined ? null : titleOf(item, `${list}.${item.id}.title`, building),
  }
}

/** An item's own name, where its list gives one as `title`: translated where a wording can. */
function titleOf({ properties }: Item, key: string, { protocol, say }: Building): string | null {
  if (typeof properties.title !== 'string') return null
  return Object.hasOwn(wordingFor(protocol, null).texts, key) ? say({ key }) : properties.title
}

function normsOf(scored: Scored, building: Building): ScoreValue['norms'] {
  const { protocol, standing, administration, verified, age, say } = building
  const { deviations, on } = administration
  const { facts, trials, conditions } = standing
  const { place } = scored
  const hand = handOf(scored, building.outline)
  const countOf = (norms: Deviation['norms']) => deviations.filter((one) => one.norms === norms).length
  return protocol.norms
    .filter(({ of }) => of === scored.score.name)
    .map((norm) =>
      compareWithNorm(norm, {
        protocol,
        score: scored.score,
        hand,
        value: scored.value,
        over: scored.over,
        person: {
          age,
          isAgeImpossible: isBornAfter(facts.birth, on),
          sex: facts.sex,
          dominant: dominantSide(facts),
        },
        conditions,
        deviations: { withheld: countOf('withheld'), caution: countOf('caution') },
        verified,
        choose: (column) => chosenHere(column, { protocol, facts, trials, conditions, place, hand }),
        say,
      }),
    )
}

function otherHand(scored: Scored, building: Building): ScoreValue['otherHand'] {
  const loop = handLoopOf(scored, building.outline)
  if (loop === null) return null
  const { all, standing, administration } = building
  const isModified = administration.deviations.some(({ norms }) => norms === 'withheld')
  const { trials, facts } = standing
  return otherHandOf({
    scored,
    loop,
    all,
    trials,
    facts,
    on: administration.on,
    isModified,
    uncertaintyBeside: (other) => beside(scored, other, building),
  })
}

function errorOf({ score, place, value, over }: Scored, building: Building): ScoreValue['error'] {
  if (value === null || over) return []
  const { protocol, standing, say } = building
  return errorsHere({ protocol, score, value, scope: scopeAt(standing, place), say })
}

/** The latest first. A value that is missing has no change. */
function changesOf(scored: Scored, building: Building): ScoreValue['change'] {
  const { protocol, standing, manner, say } = building
  const { score, place, value, over } = scored
  if (value === null) return []
  const scope = scopeAt(standing, place)
  return [...building.earlier]
    .sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.administration < b.administration ? 1 : -1))
    .map((earlier) => changeSince(earlier, { protocol, score, place, value, over, manner, scope, say }))
    .filter((change) => change !== null)
}
