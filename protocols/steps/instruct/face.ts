import type { StepMoment } from '../../runner/moment.ts'

/** What the screen draws beside text and figure: when the key comes alive again after a stop. */
export type InstructFace = { readonly dead: { readonly at: number; readonly clock: string } | null }

export const face = (moment: StepMoment): InstructFace => ({ dead: moment.dead })
