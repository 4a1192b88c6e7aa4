import { describe, expect, test } from 'vitest'
import type { Side } from '../../protocols/client.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { compareValue } from '../../protocols/scoring/compare.ts'
import { folderOf } from './folders.ts'

/** Populations of the change figures that meet a value of a hand, with the figure as printed. */
function figures(
  name: string,
  score: string,
  hand: Side,
  person: { affected?: Side; dominant?: Side },
  told: Readonly<Record<string, string>> = {},
): string[] {
  const { protocol } = readProtocol(folderOf(name))
  if (!protocol) throw new Error(`${name} can't be read`)
  const { affected = null, dominant = null } = person
  const found = compareValue({
    protocol,
    score,
    value: 30,
    age: null,
    sex: 'unknown',
    hand,
    dominant,
    affected,
    told,
  })
  if ('problem' in found) throw new Error(found.problem)
  return found.figures.map(({ statistic, printed, population }) => `${statistic} ${printed}: ${population}`)
}

describe('nine-hole peg', () => {
  test('after a stroke each hand meets the figure of its own side', () => {
    const person = { affected: 'left', dominant: 'right' } as const
    expect(figures('nine_hole_peg', 'time', 'left', person)).toContain(
      'MDC95 32.8 s: Stroke, more affected hand',
    )
    expect(figures('nine_hole_peg', 'time', 'left', person)).not.toContain(
      'MDC95 6.2 s: Stroke, less affected hand',
    )
    expect(figures('nine_hole_peg', 'time', 'right', person)).toContain(
      'MDC95 6.2 s: Stroke, less affected hand',
    )
    expect(figures('nine_hole_peg', 'time', 'right', person)).not.toContain(
      'MDC95 32.8 s: Stroke, more affected hand',
    )
  })

  test('the figures for multiple sclerosis follow dominance, in seconds and per cent side by side', () => {
    const [dominant, other] = (['left', 'right'] as const).map((hand) =>
      figures('nine_hole_peg', 'time', hand, { dominant: 'left', affected: 'right' }).filter((each) =>
        each.includes('sclerosis'),
      ),
    )
    expect(dominant).toEqual([
      'SEM 1.58 s: Multiple sclerosis, dominant hand',
      'MDC95 19.4 %: Multiple sclerosis, dominant hand; level inferred',
      'MCID 20 %: Multiple sclerosis, worsening; in common use, to be validated further',
    ])
    expect(other).toEqual([
      'SEM 2.69 s: Multiple sclerosis, other hand',
      'MDC95 29.1 %: Multiple sclerosis, other hand; level inferred',
      'MCID 20 %: Multiple sclerosis, worsening; in common use, to be validated further',
    ])
  })
})

test('box and block: SEM and bound of the more affected hand, nothing called clinically important', () => {
  expect(figures('box_and_block', 'blocks', 'right', { affected: 'right' })).toEqual([
    'MDC95 5.5 {block}: Stroke, more affected hand',
    'SEM 1.99 {block}: Stroke, more affected hand',
  ])
})

test('grip strength: an affected dominant hand meets the figures that disagree side by side', () => {
  expect(figures('grip_strength', 'mean_of_3', 'right', { affected: 'right', dominant: 'right' })).toEqual([
    'MCID 5 kgf: Adults, lower end of the range that a review suggests',
    'MCID 6.5 kgf: Adults, upper end of the range that a review suggests',
    'MCID 6.5 kgf: One year after fracture of the distal radius, affected side',
    'MCID 5 kgf: Stroke, dominant side',
  ])
})

const ofFuglMeyer = (phase: string | null, hand: Side) =>
  figures('fugl_meyer_upper', 'total', hand, { affected: 'left' }, phase === null ? {} : { phase })

describe('Fugl-Meyer, arm: by phase, and of the affected arm alone', () => {
  test('the first weeks have their own figures, which disagree side by side', () => {
    expect(ofFuglMeyer('first_weeks', 'left').map((each) => each.split(':')[0])).toEqual([
      'SEM 2.46 {score}',
      'MDC95 6.82 {score}',
      'MCID 13 {score}',
      'MCID 12 {score}',
      'MCID 9 {score}',
    ])
  })

  test('up to six months and later have others, and none of the first weeks', () => {
    expect(ofFuglMeyer('subacute', 'left').map((each) => each.split(':')[0])).toEqual([
      'MCID 9 {score}',
      'MCID 10 {score}',
    ])
    expect(ofFuglMeyer('chronic', 'left').map((each) => each.split(':')[0])).toEqual([
      'MCID 4.25 {score}',
      'MCID 7.25 {score}',
      'MDC95 3.2 {score}',
    ])
  })

  test('nobody is proposed a figure for the other arm or without a stroke', () => {
    for (const phase of ['first_weeks', 'subacute', 'chronic'])
      expect(ofFuglMeyer(phase, 'right')).toEqual([])
    expect(ofFuglMeyer('not_stroke', 'left')).toEqual([])
    expect(ofFuglMeyer(null, 'right')).toEqual([])
  })

  test('while the phase is not known none is guessed: all that may apply stand side by side, each with its phase', () => {
    const phases = ['first_weeks', 'subacute', 'chronic'].flatMap((phase) => ofFuglMeyer(phase, 'left'))
    expect(ofFuglMeyer(null, 'left')).toEqual(phases)
  })
})

const ofAction = (phase: string | null, dominant: Side) =>
  figures(
    'action_research_arm',
    'total',
    'left',
    { affected: 'left', dominant },
    phase === null ? {} : { phase },
  ).map((each) => each.split(':')[0])

test('action research arm: early figures follow dominance, the late one does not; both stand while the phase is not known', () => {
  expect(ofAction('early', 'left')).toEqual(['MCID 12 {score}'])
  expect(ofAction('early', 'right')).toEqual(['MCID 17 {score}'])
  expect(ofAction('later', 'left')).toEqual(['MCID 5.7 {score}'])
  expect(ofAction('later', 'right')).toEqual(['MCID 5.7 {score}'])
  expect(ofAction(null, 'left')).toEqual(['MCID 5.7 {score}', 'MCID 12 {score}'])
})
