import { readFileSync } from 'node:fs'
import { HostProblem } from '../../problem.ts'
import { command } from '../command.ts'
import { findProtocol, userPath } from '../find-protocol.ts'
import { readRecorded } from '../recorded.ts'
import { scoredShape, scoreEvents, scoreLines } from '../scoring.ts'

export default command({
  name: 'score',
  summary: 'score.summary',
  names: { usage: 'PROTOCOL EVENTS.jsonl', least: 2, most: 2 },
  options: {},
  shape: scoredShape,
  run({ names: [protocol = '', file = ''] }) {
    const found = findProtocol(protocol)
    const value = scoreEvents(found, readRecorded(read(file), file))
    return { value, lines: scoreLines(value), exit: value.refused.length ? 1 : 0 }
  },
})

/** `-` is the standard input, so that `events` can be piped in. */
function read(file: string): string {
  try {
    return readFileSync(file === '-' ? 0 : userPath(file), 'utf8')
  } catch {
    throw new HostProblem('score.no_file', { file })
  }
}
