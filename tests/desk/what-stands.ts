/** What was given at the desk held against what stands: on the screen, in the result, in the events on disk. */
import { expect } from 'vitest'
import { keptProtocol } from '../../main/calls/kept.ts'
import type { Records } from '../../main/records/index.ts'
import type { EventBody } from '../../protocols/runner/events.ts'
import type { AdministrationView, Trial } from '../../protocols/runner/view.ts'
import { buildResult } from '../../protocols/scoring/build-result.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import type { Result } from '../../protocols/scoring/result.ts'
import type { Entered } from './examiner.ts'

type Opened = Extract<EventBody, { kind: 'opened' }>

const scoresIn = ({ scores }: Result) =>
  scores.map(({ score, place, value, over, missing }) => ({ score, place, value, over, missing }))

/** Where an entry was made; without what it was. */
const whereOf = ({ step, place, column }: Entered): string =>
  JSON.stringify([step, Object.entries(place).toSorted(), column])

/** Columns that the program fills by itself: seconds that happenings add, presses within a window and after it. */
const OWN_COLUMNS: readonly string[] = ['added', 'after', 'tapped']

/** What stands of the trials as it was entered: what was credited or worked out wasn't. */
const standing = (trials: readonly Trial[]): readonly Entered[] =>
  trials.flatMap(({ step, place, status, outcome, readings }) =>
    Object.entries(readings).flatMap(([column, { value }]) =>
      status !== 'standing' || outcome === 'credited' || value === null || OWN_COLUMNS.includes(column)
        ? []
        : [{ step, place, column, value }],
    ),
  )

/** Every number in a row of the screen's table. */
const numbersIn = (row: string): readonly number[] =>
  [...row.replaceAll('−', '-').matchAll(/-?\d+(?:\.\d+)?/g)].map(([number]) => Number(number))

/** Without who said that one is void: the host puts the name in place of the user's id. */
const unsigned = (trials: readonly Trial[]): readonly Trial[] =>
  trials.map((trial) => (trial.void === null ? trial : { ...trial, void: { ...trial.void, by: '' } }))

/** The rules that were to act on the way did. */
export function checkActed(acted: AdministrationView['rules'], rules: readonly string[]): void {
  const names = new Set(acted.filter(({ did }) => did !== 'nothing').map(({ rule }) => rule))
  expect([...names]).toEqual(expect.arrayContaining([...rules]))
}

/** Every trial has its row on the screen, with the numbers that stand of it. */
export function checkShown(result: Result, rows: readonly string[]): void {
  expect(rows).toHaveLength(result.trials.length)
  for (const [index, trial] of result.trials.entries()) {
    const numbers = numbersIn(rows[index] ?? '')
    for (const { column, value } of standing([trial]))
      if (typeof value === 'number')
        expect([column, value, numbers.some((number) => Math.abs(number - value) < 0.051)]).toEqual([
          column,
          value,
          true,
        ])
  }
}

/** What was pressed and typed is what stands: times to a quarter of a millisecond, everything else as it was. */
export function checkEntered(result: Result, entered: readonly Entered[]): void {
  const sorted = (list: readonly Entered[]) => list.toSorted((a, b) => whereOf(a).localeCompare(whereOf(b)))
  const there = sorted(standing(result.trials))
  const mine = sorted(entered)
  expect(there.map(whereOf)).toEqual(mine.map(whereOf))
  for (const [index, { column, value }] of there.entries()) {
    const own = mine[index]?.value
    if (column === 'time') expect(Math.abs(Number(value) - Number(own))).toBeLessThanOrEqual(0.000_25)
    else expect(value).toBe(own)
  }
}

/** Works everything out anew from the events on disk, by the protocol that is kept with them. */
export function checkReplayed(records: Records, result: Result): void {
  const events = records.administration(result.administration)
  const opened = events.map(({ body }) => body).find((body) => body.kind === 'opened') as Opened
  const files = records.read.protocolFiles(opened.protocol.hash)
  if (!files) throw new Error('its protocol is missing')
  const { protocol, runner } = keptProtocol(files)
  const { administration, refused } = runner.replay(events)
  expect(refused).toEqual([])
  const anew = buildResult({
    protocol,
    administration: givenOf(result.administration, administration),
    standing: runner.standing(administration),
    earlier: [],
    verified: new Map(),
  })
  expect(unsigned(anew.trials)).toEqual(unsigned(result.trials))
  expect(scoresIn(anew)).toEqual(scoresIn(result))
}
