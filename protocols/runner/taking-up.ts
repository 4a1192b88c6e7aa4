/**
 * What a correction shows to be missing is given after all: from where the rule stands that had cut it off, or from
 * the pass that a section's condition had left out, to the end of what was cut off. Nothing else is given again.
 */
import type { Node, Rule, Section } from '../language/model.ts'
import { isSheet } from '../language/sheet.ts'
import { told } from './afterwards.ts'
import { dueInPass, type Ground, isGiven, isTrial, placeAround, sectionKind } from './due.ts'
import type { Place } from './events.ts'
import { grow, listOf, newest } from './grown.ts'
import { differing, judgedAgain } from './judging-again.ts'
import { samePlace } from './places.ts'
import { refuse } from './refuse.ts'
import type { Cut, Happened, Judged, State } from './state.ts'
import type { Transition } from './transitions.ts'
import { voidBy } from './trials.ts'
import { afterNode, spotOf, turnOf } from './tree.ts'
import type { AdministrationView, Trial } from './view.ts'

type Named = AdministrationView['missing'][number]

const isOf =
  ({ rule, place }: Named) =>
  (each: Named): boolean =>
    each.rule === rule && samePlace(each.place, place)

/** What would be judged otherwise by now, and left something out that is not given yet. */
export const missingOf = (ground: Ground, state: State): Named[] =>
  state.wouldDiffer.filter((named) => {
    const { node } = spotOf(ground.tree, named.rule)
    if (node.node === 'section') return passMissing(ground, state, node, named) !== null
    return rowsCut(state, named).length > 0
  })

/** The rows that a rule made, as far as they still stand. */
function rowsCut(state: State, named: Named): readonly Trial[] {
  const cut: Cut | null = newest(state.cuts, isOf(named))
  if (cut === null) return []
  return listOf(state.trials).filter(({ id, status }) => status === 'standing' && cut.rows.includes(id))
}

/** The place of the pass that a section would take by now, where nothing was given of it. */
function passMissing(ground: Ground, state: State, section: Section, named: Named): Place | null {
  const judged: Judged | null = newest(state.judged, isOf(named))
  const id = judged && judgedAgain(ground, state, judged)
  if (judged === null || id === null || id === judged.verdict || typeof id === 'boolean') return null
  // A choice has no passes to take up: what it left out is another way, not a missing one.
  if (sectionKind(section).chart === null) return null
  const around = placeAround(ground.tree, section.name, judged.place)
  const measures = dueInPass(ground, state, section, around, id).some(({ step }) => isTrial(step))
  return measures && !isGiven(ground, state, section, around, id) ? { ...around, [section.name]: id } : null
}

/** Rows that the rule made are void by now: what they stood for is given. */
function withoutRows(state: State, named: Named, event: Happened): State['trials'] {
  const gone = new Set(rowsCut(state, named).map(({ id }) => id))
  const broken = voidBy(event, { happening: null, valueSeen: false, cause: 'taken_up' })
  const items = listOf(state.trials).map(
    (trial): Trial =>
      gone.has(trial.id) ? { ...trial, status: 'void', outcome: null, void: broken } : trial,
  )
  return { items, length: items.length }
}

/** As if it had been judged as it would be by now. */
function judgedAsNow(ground: Ground, state: State, named: Named): State['judged'] {
  const items = listOf(state.judged).map((judged) =>
    isOf(named)(judged) ? { ...judged, verdict: judgedAgain(ground, state, judged) } : judged,
  )
  return { items, length: items.length }
}

/** Says of the rule that what it did was taken up. */
function toldOf(state: State, named: Named): State['rules'] {
  const others = listOf(state.rules).filter((each) => !isOf(named)(each))
  return grow({ items: others, length: others.length }, { ...named, did: 'taken_up' })
}

function takesUp(ground: Ground, node: Rule | Section, target: string, section: string | null): Transition {
  return told(
    'taken_up',
    {
      waits: (state) => missingOf(ground, state).length === 0,
      when: (_state, { rule }) => rule === node.name,
      refuses: (state, { rule, place }) =>
        missingOf(ground, state).some(isOf({ rule, place })) ? null : refuse('nothing_missing', { rule }),
      change: (state, { rule, place }, event) => {
        const named = { rule, place }
        const pass = node.node === 'section' ? passMissing(ground, state, node, named) : place
        const now = {
          ...state,
          judged: judgedAsNow(ground, state, named),
          trials: withoutRows(state, named, event),
        }
        return {
          judged: now.judged,
          trials: now.trials,
          rules: toldOf(state, named),
          wouldDiffer: differing(ground, now),
          place: pass ?? place,
          detour: { section },
        }
      },
    },
    target,
  )
}

/** The transitions by which the end leads back to what is missing; one for each that may have left something out. */
export const takingUp = (ground: Ground): Transition[] =>
  [...ground.tree.spots.values()].flatMap(({ node, around }) =>
    [node, ...around].some(isOneState) ? [] : wayBack(ground, node),
  )

/** A page rests on no condition that a correction could turn, and nothing in it has a state of its own. */
const isOneState = (node: Node): boolean => node.node === 'section' && isSheet(node)

function wayBack(ground: Ground, node: Node): Transition[] {
  if (node.node === 'step') return []
  if (node.node === 'section') {
    return [takesUp(ground, node, node.steps[0]?.name ?? turnOf(node.name), node.name)]
  }
  if (node.end === null) return []
  return [takesUp(ground, node, afterNode(ground.tree, node.name), node.end === 'test' ? null : node.end)]
}
