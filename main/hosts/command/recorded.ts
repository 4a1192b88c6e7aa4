/** The line that `events` writes and `score` reads: one event of an administration. */
import { z } from 'zod'
import { eventBody, type Recorded } from '../../../protocols/runner/events.ts'
import { pointerTo } from '../../contract/pointer.ts'
import { HostProblem } from '../problem.ts'
import { placeInJson } from './json-place.ts'

/** RFC 3339 with an offset. */
const moment = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/)

export const recordedLine = z.strictObject({
  id: z.uuid(),
  at: moment,
  /** Id of the user who did it; empty where nobody is named. */
  user: z.string(),
  body: eventBody,
})

/**
 * Reads JSON lines; empty lines are passed over.
 * @throws HostProblem that names file, line and column of the first line that is no event, or repeats one
 */
export function readRecorded(text: string, file: string): readonly Recorded[] {
  const events: Recorded[] = []
  const lineOf = new Map<string, number>()
  for (const [index, line] of text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .entries()) {
    if (!line.trim()) continue
    const number = index + 1
    const event = readLine(line, file, number)
    const before = lineOf.get(event.id)
    if (before !== undefined)
      throw new HostProblem('score.twice', {
        file,
        line: String(number),
        before: String(before),
        column: String(placeInJson(line, ['id']) + 1),
      })
    lineOf.set(event.id, number)
    events.push(event)
  }
  if (!events.length) throw new HostProblem('score.no_events', { file })
  return events
}

function readLine(line: string, file: string, number: number): Recorded {
  let json: unknown
  try {
    json = JSON.parse(line)
  } catch (error) {
    const found = /position (\d+)/.exec(error instanceof Error ? error.message : '')
    const column = found ? Number(found[1]) + 1 : line.length + 1
    throw new HostProblem('score.not_json', { file, line: String(number), column: String(column) })
  }
  const read = recordedLine.safeParse(json)
  if (read.success) return read.data
  const path = deepestPath(read.error)
  const { at, problem } = pointerTo(read.error)
  throw new HostProblem('score.not_event', {
    file,
    line: String(number),
    column: String(placeInJson(line, path) + 1),
    at: path.length ? `/${path.join('/')}` : at,
    problem,
  })
}

/** Where the first problem lies; in a body of many possible kinds, where the likeliest kind goes wrong. */
function deepestPath(error: z.ZodError): readonly PropertyKey[] {
  const paths = error.issues.flatMap(function pathsOf(issue): readonly (readonly PropertyKey[])[] {
    if (issue.code === 'invalid_union')
      return issue.errors.flatMap((issues) => issues.flatMap(pathsOf).map((path) => [...issue.path, ...path]))
    if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...issue.path, key])
    return [issue.path]
  })
  return paths.reduce((deepest, path) => (path.length > deepest.length ? path : deepest), paths[0] ?? [])
}
