import { z } from 'zod'
import { projector } from '../../../calls/projector.ts'
import { restore, systemClock } from '../../../records/index.ts'
import { recordsFolder } from '../../folders.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { userPath } from '../find-protocol.ts'
import { STORE_OPTIONS } from '../open-store.ts'

const shape = z.strictObject({
  folder: z.string(),
  at: z.string(),
  events: z.int(),
  /** Where what was replaced lies now; null where nothing was there. */
  setAside: z.string().nullable(),
})

export default command({
  name: 'restore',
  summary: 'restore.summary',
  names: { usage: 'BACKUP', least: 1, most: 1 },
  options: { ...STORE_OPTIONS, replace: { type: 'boolean' } },
  shape,
  async run(given) {
    const asked = given.text('records')
    const demo = given.flag('demo')
    const folder = recordsFolder(asked === null ? null : userPath(asked), demo)
    const { at, events, setAside } = await restore(userPath(given.names[0] ?? ''), {
      folder,
      store: demo ? 'demo' : 'clinic',
      projector,
      clock: systemClock,
      replaces: given.flag('replace'),
    })
    const value = { folder, at, events, setAside }
    return { value, lines: [say('restore.done', { ...value, setAside: setAside ?? 'none' })], exit: 0 }
  },
})
