import type { Step } from '../language/model.ts'
import type { Place } from './events.ts'

/** A step as it stands now: what its kind needs to draw it or to make up what comes next. */
export interface StepMoment {
  readonly step: Step
  readonly place: Place
}
