import { expect, test } from 'vitest'
import { readBack, reportOf } from './reports.ts'

test('says what rules did, what did nothing for lack of an answer, and who rated when', () => {
  const input = reportOf('grip_strength')
  const { text } = readBack({
    ...input,
    view: {
      ...input.view,
      rules: [
        { rule: 'all_parts', place: {}, did: 'credited', text: 'The others count as full.' },
        { rule: 'short_rest', place: {}, did: 'asked', text: 'Shall it be?' },
        { rule: 'smallest_gap', place: { hand: 'left' }, did: 'nothing', text: '' },
      ],
      raters: [
        { id: 'rater_1', text: 'Rater 1', toCome: 0, later: [] },
        {
          id: 'rater_2',
          text: 'Rater 2',
          toCome: 3,
          later: [{ at: '2026-03-05T10:03:00.000+01:00', by: 'Ada Brook' }],
        },
      ],
    },
  })
  expect(text).not.toContain('Shall it be?')
  for (const words of [
    'The others count as full.',
    'smallest gap (left hand): nothing was done, since what it asks has no answer.',
    'Rater 1: with the test',
    'Rater 2: 5 March 2026, 10:03, Ada Brook',
    'Rater 2: 3 grades still to come',
  ]) {
    expect(text).toContain(words)
  }
})
