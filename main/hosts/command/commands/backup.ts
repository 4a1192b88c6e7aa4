import { z } from 'zod'
import { backupFolder } from '../../../calls/upkeep.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { userPath } from '../find-protocol.ts'
import { STORE_OPTIONS, withStores } from '../open-store.ts'

const shape = z.strictObject({ folder: z.string(), at: z.string(), events: z.int() })

export default command({
  name: 'backup',
  summary: 'backup.summary',
  names: { usage: '', least: 0, most: 0 },
  options: { ...STORE_OPTIONS, to: { type: 'string', value: 'PATH' } },
  shape,
  run: (given) =>
    withStores(given, async ([first]) => {
      if (!first) throw new Error('There is a store, or this is not called.')
      const to = given.text('to')
      const made = await first.records.backUp(to === null ? backupFolder(first.folder) : userPath(to))
      return { value: { ...made }, lines: [say('backup.made', { ...made })], exit: 0 }
    }),
})
