import { z } from 'zod'
import { say } from '../../words.ts'
import { readSealCode } from '../../../records/index.ts'
import { HostProblem } from '../../problem.ts'
import { command, type Given } from '../command.ts'
import { STORE_OPTIONS, withStores } from '../open-store.ts'

const shape = z.array(
  z.strictObject({
    store: z.enum(['clinic', 'demo', 'rehearsal']),
    folder: z.string(),
    events: z.int(),
    devices: z.int(),
    /** Events whose body was erased: the chain still holds. */
    erased: z.int(),
    /** Events that were lost with a damaged file, as the records themselves say. */
    lost: z.int(),
    /** The seal that was asked for by its code, where these records have it. */
    seal: z.strictObject({ code: z.string(), administration: z.string(), at: z.string() }).nullable(),
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

/** @throws HostProblem where what was typed is no code */
function codeAsked(given: Given): string | null {
  const typed = given.text('seal')
  if (typed === null) return null
  const code = readSealCode(typed)
  if (code === null) throw new HostProblem('verify.no_code', { given: typed })
  return code
}

const sealLine = (code: string, found: z.infer<typeof shape>[number]['seal']): string =>
  found
    ? say('verify.seal_found', { code, administration: found.administration, at: found.at })
    : say('verify.seal_missing', { code })

export default command({
  name: 'verify',
  summary: 'verify.summary',
  names: { usage: '', least: 0, most: 0 },
  options: { ...STORE_OPTIONS, seal: { type: 'string', value: 'CODE' } },
  shape,
  run: (given) =>
    withStores(
      given,
      async (stores) => {
        const asked = codeAsked(given)
        const value: z.infer<typeof shape> = []
        for (const { store, folder, records } of stores) {
          const report = await records.verify({ progress: () => {}, signal: new AbortController().signal })
          const problems = report.problems.map(({ code, event, detail }) => ({
            code,
            event,
            message: say(`verify.${code}`, { event: event ?? '', ...detail }),
            detail: { ...detail },
          }))
          value.push({
            store,
            folder,
            ...report,
            seal: asked === null ? null : records.read.sealBy(asked),
            problems,
          })
        }
        const found = value.find(({ seal }) => seal)?.seal ?? null
        const isWhole =
          value.every(({ problems }) => problems.length === 0) && (asked === null || found !== null)
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
            ...(asked === null ? [] : [sealLine(asked, found)]),
            ...(isWhole ? [] : [say('verify.mend')]),
          ],
          exit: isWhole ? 0 : 1,
        }
      },
      { examines: true },
    ),
})
