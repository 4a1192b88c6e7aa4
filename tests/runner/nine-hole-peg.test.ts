import { expect, test } from 'vitest'
import { Giving, libraryProtocol } from './giving.ts'

test('the nine-hole peg test is given from the first key to the end', () => {
  const giving = new Giving(libraryProtocol('nine_hole_peg'))
  giving.open(undefined, { board_build: 'square_box', runs: '1' })
  expect(giving.where()).toBe('confirming')
  expect(giving.view().firstHand).toEqual({ hand: 'right', rule: 'dominant-first' })
  giving.do({ kind: 'confirmed', what: 'start' })
  expect(giving.where()).toBe('laid_out at right: waiting')
  giving.toTrial()
  expect(giving.where()).toBe('try_out at right: waiting')
  giving.time(25).toTrial()
  expect(giving.where()).toBe('run at right, 1: waiting')
  giving.time(20.25).toTrial()
  expect(giving.where()).toBe('try_out at left: waiting')
  giving.time(30).toTrial().time(22.5)
  expect(giving.where()).toBe('end')
  expect(giving.rows('run')).toEqual(['right 1 done time 20.25', 'left 1 done time 22.5'])
  giving.do({ kind: 'finished' })
  expect(giving.view().phase).toBe('finished')
})
