import { earlierOf } from '../../protocols/scoring/build-result.ts'
import type { Earlier } from '../../protocols/scoring/change.ts'
import { givenOf } from '../../protocols/scoring/given.ts'
import type { AdministrationRow } from '../records/index.ts'
import type { InHand } from './live.ts'

/** What was given before comes first: by the day it counts for, then as begun. */
export const isBefore = (
  a: Pick<AdministrationRow, 'on' | 'startedAt'>,
  b: Pick<AdministrationRow, 'on' | 'startedAt'>,
): boolean => (a.on === b.on ? a.startedAt < b.startedAt : a.on < b.on)

/** The rows of a client's list that a result is compared with, as that comparison takes them. */
export function earlierThan(
  row: AdministrationRow,
  all: readonly AdministrationRow[],
  read: (id: string) => InHand,
): readonly Earlier[] {
  return all
    .filter((one) => one.protocol === row.protocol && one.finishedAt !== null && !one.enteredInError)
    .filter((one) => isBefore(one, row))
    .map(({ id }) => {
      const { kept, administration } = read(id)
      return earlierOf(givenOf(id, administration), kept.runner.standing(administration))
    })
}
