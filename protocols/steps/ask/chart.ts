import { z } from 'zod'
import { type Effect, LEAVE, type StepChart } from '../../runner/chart-parts.ts'
import type { StepMoment } from '../../runner/moment.ts'
import { isWithin, notPlausible } from '../../runner/plausible.ts'
import { refuse } from '../../runner/refuse.ts'
import type { Refusal } from '../../runner/view.ts'
import { decimalsOf } from '../decimals.ts'
import { clockTime, keyDead, move, pressed } from '../press.ts'
import { unitOf } from './columns.ts'
import type { AskFields } from './keys.ts'

/** An option's id, a number or words; `confirmed` when a number was asked for again. */
export const answered = z.strictObject({
  answer: z.union([z.string().trim().min(1).max(1000), z.number()]),
  confirmed: z.boolean(),
})
type Answer = string | number
export const kept = pressed

export const fieldsOf = (moment: StepMoment) => moment.step.fields as unknown as AskFields

/** Why something is no answer to this question. */
export function misfits(moment: StepMoment, _column: string, answer: Answer): Refusal | null {
  const { options, range, decimals, words } = fieldsOf(moment)
  if (options !== undefined) {
    return Object.hasOwn(options, answer) ? null : refuse('no_such_answer', { answer })
  }
  if ((range !== undefined) !== (typeof answer === 'number'))
    return refuse('wrong_type', { column: 'answer' })
  if (typeof answer === 'number') {
    const tooMany = decimals !== undefined && decimalsOf(answer) > decimals
    return tooMany ? refuse('too_many_decimals', { decimals }) : null
  }
  return words !== undefined && answer.length > words ? refuse('too_long', { most: words }) : null
}

function does(moment: StepMoment, { answer }: { readonly answer: Answer }): Effect {
  const { range, options } = fieldsOf(moment)
  const isNumber = typeof answer === 'number'
  const put = Object.entries(options ?? {}).map(([id, text]) => [id, moment.say(text)])
  const reading = {
    value: answer,
    unit: isNumber ? unitOf(fieldsOf(moment)) : null,
    over: false,
    typed: true,
    confirmed: isNumber && range !== undefined && !isWithin(answer, range),
    corrected: null,
    ...(options !== undefined && { options: Object.fromEntries(put) }),
  }
  return {
    ...(moment.trial === null && { begins: { input: null, stamps: [] } }),
    trial: { outcome: 'done', readings: { answer: reading } },
  }
}

const answers = move(answered, {
  to: 'answered',
  refuses: (moment, { answer, confirmed }) => {
    const { range } = fieldsOf(moment)
    const misfit = misfits(moment, 'answer', answer)
    if (misfit !== null || typeof answer === 'string' || range === undefined) return misfit
    return notPlausible(answer, range, confirmed)
  },
  does,
})

const keeps = move(kept, {
  to: LEAVE,
  main: true,
  refuses: (moment, { stamp }) => keyDead(moment, stamp),
  does: (_moment, { stamp }) => (stamp === null ? {} : { ends: clockTime(stamp) }),
})

export const chart: StepChart = {
  initial: 'waiting',
  states: {
    waiting: { voidable: true, on: { answered: [answers] } },
    answered: { flight: 'held', on: { answered: [answers], kept: [keeps] } },
  },
}
