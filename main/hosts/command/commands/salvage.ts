import { z } from 'zod'
import { projector } from '../../../calls/projector.ts'
import { salvage, systemClock } from '../../../records/index.ts'
import { recordsFolder } from '../../folders.ts'
import { salvageLines } from '../../salvage-lines.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { userPath } from '../find-protocol.ts'
import { STORE_OPTIONS } from '../open-store.ts'

const shape = z.strictObject({
  /** The folder in which the damaged file lies now. */
  setAside: z.string(),
  kept: z.int(),
  lost: z.int(),
  altered: z.int(),
  of: z.array(
    z.strictObject({ kind: z.enum(['client', 'administration']), id: z.string(), title: z.string() }),
  ),
})

export default command({
  name: 'salvage',
  summary: 'salvage.summary',
  names: { usage: '', least: 0, most: 0 },
  options: STORE_OPTIONS,
  shape,
  run(given) {
    const asked = given.text('records')
    const demo = given.flag('demo')
    const folder = recordsFolder(asked === null ? null : userPath(asked), demo)
    const report = salvage({ folder, store: demo ? 'demo' : 'clinic', projector, clock: systemClock })
    const isWhole = report.lost === 0 && report.altered === 0
    return {
      value: { ...report, of: [...report.of] },
      lines: [...salvageLines(report), ...(isWhole ? [say('salvage.whole')] : [])],
      exit: isWhole ? 0 : 1,
    }
  },
})
