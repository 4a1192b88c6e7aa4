import { expect, test } from 'vitest'
import { apartByNeeds } from '../../protocols/scoring/not-worked-out.ts'
import { reportOf } from '../reports/reports.ts'

const { scores } = reportOf('nine_hole_peg').result
const needs = { value: null, missing: { code: 'needs_not_met', detail: {} } }
const refused = { value: null, missing: { code: 'refused', detail: { step: 'run', column: 'time' } } }

test('scores that nowhere had what they need stand apart, by title, each once', () => {
  const { told, notWorkedOut } = apartByNeeds(scores)
  expect(told.map(({ score }) => score)).toEqual(['time', 'time'])
  expect(notWorkedOut).toEqual(['Fastest run', 'Pegs placed where a run had no time'])
})

test('a score with a value or another reason in one place is told in every place', () => {
  const changed = scores.map((score, at) =>
    score.score === 'best' ? { ...score, ...(at % 2 ? needs : refused) } : score,
  )
  expect(apartByNeeds(changed).told.filter(({ score }) => score === 'best')).toHaveLength(2)
  const refusing = scores.map((score) => ({ ...score, ...refused }))
  expect(apartByNeeds(refusing).notWorkedOut).toEqual([])
})

test('scores that are not for showing stand nowhere', () => {
  const hidden = scores.map((score) => ({ ...score, shown: false }))
  expect(apartByNeeds(hidden)).toEqual({ told: [], notWorkedOut: [] })
})
