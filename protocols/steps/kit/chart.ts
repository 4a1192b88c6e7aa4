import { z } from 'zod'
import { type Effect, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import { stamp } from '../../runner/events.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Refusal } from '../../runner/view.ts'
import { keyDead, move } from '../press.ts'
import { piecesOf } from './face.ts'

/** Every piece is ticked, or what is wrong with it is told: that is a deviation. */
export const checked = z.strictObject({
  ticked: z.array(z.string()).max(50),
  problems: z.array(z.strictObject({ piece: z.string(), text: z.string().trim().min(1).max(500) })).max(50),
  stamp: stamp.nullable(),
})
type Checked = z.infer<typeof checked>

function refuses(moment: StepMoment, data: Checked): Refusal | null {
  const pieces = piecesOf(moment)
  const told = [...data.ticked, ...data.problems.map(({ piece }) => piece)]
  const stranger = told.find((piece) => !pieces.includes(piece))
  if (stranger !== undefined) return refuse('no_such_piece', { piece: stranger })
  const missing = pieces.find((piece) => !told.includes(piece))
  if (missing !== undefined) return refuse('piece_unchecked', { piece: missing })
  return keyDead(moment, data.stamp)
}

const does = (_moment: StepMoment, data: Checked): Effect => ({
  deviates: data.problems.map(({ piece, text }) => ({
    code: 'kit_problem',
    what: piece,
    reason: text,
    norms: 'caution',
  })),
})

export const chart: StepChart = {
  initial: 'waiting',
  states: { waiting: { on: { checked: [move(checked, { to: LEAVE, main: true, refuses, does })] } } },
}
