/** What the kinds have in common that are shown or done and then left by the main key. */
import type { ClockTime } from '../../protocols/runner/moment.ts'
import type { StepView } from '../../protocols/runner/view.ts'
import type { StepFace } from './face.ts'

const nothing = (): null => null

/** When the last stop made the main key dead, as the step's face has it. */
const deadOf = (step: StepView): ClockTime | null => (step.face.dead as ClockTime | null) ?? null

export const shown = {
  isTrial: false,
  press: (_event, stamp, prepared) => ({ stamp, ...prepared }),
  bounceMs: () => null,
  dead: deadOf,
  due: nothing,
  isRunning: () => false,
  signals: () => [],
  Typed: null,
  cell: null,
} satisfies Partial<StepFace>
