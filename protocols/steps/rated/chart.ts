import { z } from 'zod'
import { type Effect, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Refusal } from '../../runner/view.ts'
import { clockTime, keyDead, move, pressed } from '../press.ts'
import { allowedOf, highestOf } from './grades.ts'

/** A grade of the scale; `reason` where one above the highest is given all the same, which is a deviation. */
export const graded = z.strictObject({
  grade: z.int().min(0).max(99),
  reason: z.string().trim().min(1).max(1000).nullable(),
})
type Graded = z.infer<typeof graded>
export const kept = pressed

/** Why a grade can't be given here at all. */
export function misfits(moment: StepMoment, _column: string, grade: string | number): Refusal | null {
  const allowed = allowedOf(moment)
  if (allowed === null) return refuse('no_grades')
  return allowed.includes(Number(grade)) ? null : refuse('no_such_grade', { grade })
}

const isAbove = (moment: StepMoment, grade: number): boolean => {
  const highest = highestOf(moment)
  return typeof highest === 'number' && grade > highest
}

function refuses(moment: StepMoment, { grade, reason }: Graded): Refusal | null {
  const misfit = misfits(moment, 'grade', grade)
  if (misfit !== null) return misfit
  return reason === null && isAbove(moment, grade)
    ? refuse('above_highest', { grade, highest: Number(highestOf(moment)) })
    : null
}

function does(moment: StepMoment, { grade, reason }: Graded): Effect {
  const reading = {
    value: grade,
    unit: '{score}',
    over: false,
    typed: true,
    confirmed: isAbove(moment, grade),
    corrected: null,
  }
  return {
    local: { reason: isAbove(moment, grade) ? reason : null },
    ...(moment.trial === null && { begins: { input: null, stamps: [] } }),
    trial: { outcome: 'done', readings: { grade: reading } },
  }
}

const grades = move(graded, { to: 'graded', refuses, does })

const keeps = move(kept, {
  to: LEAVE,
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
  does: ({ local, step }, { stamp }) => ({
    ...(typeof local.reason === 'string' && {
      deviates: [{ code: 'grade_above', what: step.name, reason: local.reason, norms: 'caution' }],
    }),
    ...(stamp !== null && { ends: clockTime(stamp) }),
  }),
})

export const chart: StepChart = {
  initial: 'waiting',
  states: {
    waiting: { voidable: true, on: { graded: [grades] } },
    graded: { flight: 'held', on: { graded: [grades], kept: [keeps] } },
  },
}
