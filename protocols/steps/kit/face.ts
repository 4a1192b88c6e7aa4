import type { StepMoment } from '../../runner/moment.ts'
import type { KitFields } from './keys.ts'

/** The pieces to be ticked off, in the protocol's words. */
export type KitFace = {
  readonly pieces: readonly { readonly id: string; readonly text: string; readonly check: string | null }[]
  readonly dead: { readonly at: number; readonly clock: string } | null
}

export const piecesOf = (moment: StepMoment): readonly string[] =>
  (moment.step.fields as unknown as KitFields).of

export const face = (moment: StepMoment): KitFace => ({
  pieces: piecesOf(moment).map((id) => {
    const piece = moment.kit.find((each) => each.id === id)
    return {
      id,
      text: piece ? moment.say(piece.text) : id,
      check: piece?.check ? moment.say(piece.check) : null,
    }
  }),
  dead: moment.dead,
})
