/** The drawing that a step shows, of the hand whose turn it is there. */
import { shownFigure, type ShownFigure } from '../language/figures/shown-figure.ts'
import type { Step } from '../language/model.ts'
import type { Ground } from './due.ts'
import type { Place } from './events.ts'
import { spotOf } from './tree.ts'

export function showFigure({ protocol, tree }: Ground, step: Step, place: Place): ShownFigure | null {
  const svg = step.figure === null ? undefined : protocol.figures[step.figure]
  if (svg === undefined) return null
  const loop = spotOf(tree, step.name).around.findLast(({ fields }) => fields.in === 'hands')
  const hand = loop && place[loop.name]
  return shownFigure(svg, hand === 'left' || hand === 'right' ? hand : null)
}
