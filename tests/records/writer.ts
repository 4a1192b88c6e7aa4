/** Appends to one administration as fast as it can and says each batch once it was acknowledged. */
import { writeSync } from 'node:fs'
import { Refused } from '../../main/contract/procedure.ts'
import { openRecords, systemClock } from '../../main/records/index.ts'
import { addUser, begin, counting, give, tap } from './fixtures.ts'

const say = (what: unknown) => writeSync(1, `${JSON.stringify(what)}\n`)

/** @param seed decides the sizes of the batches  @param batches how many there are */
export function write(folder: string, seed: string, batches: string): void {
  try {
    const records = openRecords({ folder, store: 'clinic', projector: counting, clock: systemClock })
    const user = addUser(records, 'Ada')
    const administration = begin(records, user, null)
    let state = Number(seed)
    for (let batch = 0; batch < Number(batches); batch += 1) {
      state = (state * 1_103_515_245 + 12_345) % 2_147_483_648
      const bodies = Array.from({ length: 1 + (state % 4) }, (_, index) => tap(batch * 10 + index))
      const kept = give(records, administration, bodies, user)
      say({ administration, ids: kept.map((entry) => entry.id) })
    }
    records.close()
  } catch (error) {
    if (!(error instanceof Refused)) throw error
    say({ fault: error.fault })
  }
}
