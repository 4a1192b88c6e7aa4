/**
 * Single whole paths, for what a walk in the order of length doesn't come to within its bound: on each of them a step
 * ends by one habit, and everything else as usual.
 */
import { type Closing, CLOSINGS } from '../language/model.ts'
import { outlineOf } from '../scoring/outline.ts'
import { endedHere, innermostPass, movesOf } from './moves.ts'
import { randomFrom } from '../random.ts'
import { missingIn, note, type Stand, type Taken, type Walk } from './walk.ts'

/** In which of its outcomes a step ends the so-manieth time, from 1; null: the usual one. */
type Habit = (at: Pick<Taken, 'at' | 'place'>, time: number) => string | null

/** Outcomes on such paths, for each state that may be walked. */
const FOLLOWED = 40

export const usualPath = (walk: Walk, first: Stand): void => follow(walk, first, () => null)

/**
 * For scores that had no value yet and rules that never held: on from the shortest way to each step that they rest
 * on, then by each habit of such a step, with each client and under each condition that they speak of.
 */
export function followMissing(walk: Walk, firsts: readonly Stand[]): void {
  for (const { steps } of restingOf(walk))
    for (const step of steps) {
      const stand = walk.ways.get(step)
      if (stand !== undefined && goesOn(walk)) usualPath(walk, stand)
    }
  for (const habitsOf of KINDS_OF_HABITS)
    for (const { isMissing, steps, conditions } of restingOf(walk)) {
      const fitting = firsts
        .filter(({ start }) => Object.keys(start.conditions).every((name) => conditions.has(name)))
        .toSorted((a, b) => told(b) - told(a))
      for (const first of fitting)
        for (const habit of habitsOf(walk, steps)) if (isMissing() && goesOn(walk)) follow(walk, first, habit)
    }
}

/** How many conditions stand otherwise than usual. */
const told = ({ start }: Stand): number => Object.keys(start.conditions).length

function goesOn(walk: Walk): boolean {
  const { scores, rules } = missingIn(walk)
  return scores.length + rules.length > 0 && walk.followed < FOLLOWED * walk.exploration.states
}

/** What something missing rests on. */
interface Resting {
  isMissing(): boolean
  readonly steps: ReadonlySet<string>
  readonly conditions: ReadonlySet<string>
}

function restingOf(walk: Walk): readonly Resting[] {
  const missing = missingIn(walk)
  return [
    ...missing.rules.map((rule) => ({
      isMissing: () => !walk.fired.has(rule),
      ...walk.relevance.behind(rule),
    })),
    ...missing.scores.map((score) => ({
      isMissing: () => !walk.produced.has(score),
      ...walk.relevance.behind(score),
    })),
  ]
}

/** Each outcome always, the first time alone, or every time but the first. */
function simpleHabits(walk: Walk, step: string, isThen: (time: number) => boolean): readonly Habit[] {
  const outcomes = [...(walk.met.get(step)?.outcomes ?? []), ...closingsOf(walk, step)]
  return outcomes.map(
    (outcome): Habit =>
      ({ at }, time) =>
        at === step && isThen(time) ? outcome : null,
  )
}

/** Closings are alike, a step without a value, but for those that count as one. */
function closingsOf({ protocol }: Walk, step: string): readonly Closing[] {
  const counting = new Set(Object.keys(outlineOf(protocol).steps.get(step)?.countsAs ?? {}))
  const plain = CLOSINGS.find((outcome) => !counting.has(outcome))
  return CLOSINGS.filter((outcome) => outcome === plain || counting.has(outcome))
}

/** So many ways in which all steps have habits together. */
const JOINT = 12

/** Every step of the file always in one of its outcomes: which one is settled by a number, the same each time. */
function jointHabits(walk: Walk): readonly Habit[] {
  return Array.from(
    { length: JOINT },
    (_none, seed): Habit =>
      ({ at }) => {
        const outcomes = [...(walk.met.get(at)?.outcomes ?? [])]
        const random = randomFrom(JOINT * walk.names.steps.indexOf(at) + seed)
        return outcomes[Math.floor(random() * outcomes.length)] ?? null
      },
  )
}

/** One outcome in one pass of the innermost loop, another in all other passes: such as an answer that is right each time. */
function habitsByPass(walk: Walk, step: string): readonly Habit[] {
  const { outcomes = new Set<string>(), passes = new Set<string>() } = walk.met.get(step) ?? {}
  return [...passes].flatMap((pass) =>
    [...outcomes].flatMap((inIt) =>
      [...outcomes].flatMap((elsewhere): Habit[] =>
        inIt === elsewhere
          ? []
          : [({ at, place }) => (at !== step ? null : innermostPass(place) === pass ? inIt : elsewhere)],
      ),
    ),
  )
}

type HabitsOf = (walk: Walk, steps: ReadonlySet<string>) => readonly Habit[]

const ofEach =
  (habitsOf: (walk: Walk, step: string) => readonly Habit[]): HabitsOf =>
  (walk, steps) =>
    [...steps].flatMap((step) => habitsOf(walk, step))

/** Those first that most often lead there. */
const KINDS_OF_HABITS: readonly HabitsOf[] = [
  ofEach((walk, step) => simpleHabits(walk, step, () => true)),
  jointHabits,
  ofEach((walk, step) => simpleHabits(walk, step, (time) => time === 1)),
  ofEach(habitsByPass),
  ofEach((walk, step) => simpleHabits(walk, step, (time) => time > 1)),
]

/** To the end; where the bound of length comes first, the test is ended there. */
function follow(walk: Walk, first: Stand, habit: Habit): void {
  const times = new Map<string, number>()
  let stand: Stand | null = first
  let last = first
  while (stand !== null && stand.depth < walk.exploration.depth) {
    const here: Stand = stand
    last = here
    const atHand = walk.runner.atHand(here.administration)
    note(walk, here)
    if (atHand.phase !== 'giving') return
    const moves = movesOf(walk, atHand, here)
    const at = moves[0]?.taken
    const time = (times.get(at?.at ?? '') ?? 0) + 1
    if (at !== undefined) times.set(at.at, time)
    walk.followed += 1
    const wanted = at === undefined ? null : habit(at, time)
    const inOrder = [...moves.filter(({ taken }) => taken.outcome === wanted), ...moves]
    stand = inOrder.reduce<Stand | null>((found, move) => found ?? move.make(here), null)
  }
  const ended = endedHere(walk, last)
  if (ended !== null) note(walk, ended)
}
