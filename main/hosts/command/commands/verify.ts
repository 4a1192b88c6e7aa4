import { z } from 'zod'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { STORE_OPTIONS, withStores } from '../open-store.ts'

const shape = z.array(
  z.strictObject({
    store: z.enum(['clinic', 'demo', 'rehearsal']),
    folder: z.string(),
    events: z.int(),
    devices: z.int(),
    /** Events whose body was erased: the chain still holds. */
    erased: z.int(),
    problems: z.array(
      z.strictObject({
        code: z.string(),
        /** Id of the event, or null where no single one is at fault. */
        event: z.string().nullable(),
        message: z.string(),
        detail: z.record(z.string(), z.union([z.string(), z.number()])),
      }),
    ),
  }),
)

export default command({
  name: 'verify',
  summary: 'verify.summary',
  names: { usage: '', least: 0, most: 0 },
  options: STORE_OPTIONS,
  shape,
  run: (given) =>
    withStores(given, async (stores) => {
      const value: z.infer<typeof shape> = []
      for (const { store, folder, records } of stores) {
        const report = await records.verify({ progress: () => {}, signal: new AbortController().signal })
        const problems = report.problems.map(({ code, event, detail }) => ({
          code,
          event,
          message: say(`verify.${code}`, { event: event ?? '', ...detail }),
          detail: { ...detail },
        }))
        value.push({ store, folder, ...report, problems })
      }
      const isWhole = value.every(({ problems }) => problems.length === 0)
      return {
        value,
        lines: [
          ...value.flatMap(({ store, folder, events, devices, erased, problems }) => [
            say('verify.looked', {
              store: say(`verify.store.${store}`),
              folder,
              events,
              devices,
              erased,
              problems: problems.length,
            }),
            ...problems.map(({ message }) => say('verify.problem', { message })),
          ]),
          ...(isWhole ? [] : [say('verify.mend')]),
        ],
        exit: isWhole ? 0 : 1,
      }
    }),
})
