import { expect, test } from 'vitest'
import { Giving, madeProtocol } from '../runner/giving.ts'

const PROTOCOL = madeProtocol(`
  - { kit: laid_out, of: [board, pegs] }
  - { position: seated }
  - { instruct: explain, text: Explain. }
  - { demonstrate: shown }
  - { timed: run, start: { said: go }, stop: { seen: Board is empty. } }
`)

const checked = (giving: Giving, ticked: string[], problems: { piece: string; text: string }[] = []) =>
  giving.take(giving.body('checked', { ticked, problems, stamp: null }))

test('every piece is ticked, or what is wrong with it is told', () => {
  const giving = new Giving(PROTOCOL).begin()
  expect(giving.view().step?.face).toMatchObject({
    pieces: [
      { id: 'board', text: 'Board', check: null },
      { id: 'pegs', text: 'Pegs', check: 'Count them.' },
    ],
  })
  expect(checked(giving, ['board'])).toBe('piece_unchecked')
  expect(checked(giving, ['board', 'pegs', 'cup'])).toBe('no_such_piece')
  expect(checked(giving, ['board'], [{ piece: 'pegs', text: 'One is missing' }])).toBeNull()
  expect(giving.view().deviations).toMatchObject([
    { code: 'kit_problem', what: 'pegs', reason: 'One is missing' },
  ])
})

test('STD-ADM-8 kit, position and words of the place come before the first trial', () => {
  const giving = new Giving(PROTOCOL).begin()
  const trial = { kind: 'timed.armed', step: 'run', place: {}, stamp: giving.stamp() }
  const before: [string, () => unknown][] = [
    ['laid_out: waiting', () => checked(giving, ['board', 'pegs'])],
    ['seated: waiting', () => giving.press('set')],
    ['explain: waiting', () => giving.press('said')],
    ['shown: waiting', () => giving.press('shown')],
  ]
  for (const [where, goOn] of before) {
    expect(giving.where()).toBe(where)
    expect(giving.take(trial)).toBe('wrong_step')
    goOn()
  }
  expect(giving.take({ ...trial, stamp: giving.stamp() })).toBeNull()
  expect(giving.where()).toBe('run: armed')
})
