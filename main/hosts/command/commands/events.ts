import { z } from 'zod'
import { HostProblem } from '../../problem.ts'
import { command } from '../command.ts'
import { STORE_OPTIONS, withStores } from '../open-store.ts'
import { recordedLine } from '../recorded.ts'

export default command({
  name: 'events',
  summary: 'events.summary',
  names: { usage: 'ID', least: 1, most: 1 },
  options: STORE_OPTIONS,
  shape: z.array(recordedLine),
  jsonLines: true,
  run: (given) =>
    withStores(given, (stores) => {
      const [id = ''] = given.names
      const found = stores
        .map(({ records }) => records.administration(id))
        .find((events) => events.length > 0)
      if (!found) throw new HostProblem('events.none', { id, folder: stores[0]?.folder ?? '' })
      return { value: [...found], lines: [], exit: 0 }
    }),
})
