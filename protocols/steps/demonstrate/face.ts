import type { StepMoment } from '../../runner/moment.ts'

/** What the screen draws beside text and figure: when the key comes alive again after a stop. */
export type DemonstrateFace = { readonly dead: { readonly at: number; readonly clock: string } | null }

export const face = (moment: StepMoment): DemonstrateFace => ({ dead: moment.dead })
