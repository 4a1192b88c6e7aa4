import type { StepView } from '../../protocols/runner/view.ts'
import type { CellFace, StepFace } from './face.ts'

const found = import.meta.glob<StepFace>('./*/index.tsx', { eager: true, import: 'default' })

/** Every kind's face, by kind. */
export const faces: ReadonlyMap<string, StepFace> = new Map(
  Object.values(found).map((face) => [face.kind, face]),
)

/** The face of a step's kind. A kind without one is a defect of ours: the chart offers no step that can't be shown. */
export function faceOf(step: StepView): StepFace {
  const face = faces.get(step.kind)
  if (face === undefined) throw new Error(`No face for steps of the kind "${step.kind}"`)
  return face
}

/** How a kind of step is given in a cell of a page; null where it can't be. */
export const cellFaceOf = (kind: string): CellFace | null => faces.get(kind)?.cell ?? null
