import { existsSync, statSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { z } from 'zod'
import { localTime, systemClock } from '../../../records/index.ts'
import { renderForm } from '../../../reports/index.ts'
import { HostProblem } from '../../problem.ts'
import { say } from '../../words.ts'
import { command } from '../command.ts'
import { findProtocol, userPath } from '../find-protocol.ts'

/** `file`: where it lies, as an absolute path. */
const shape = z.strictObject({ file: z.string(), pages: z.int().min(1) })

export default command({
  name: 'form',
  summary: 'form.summary',
  names: { usage: 'PROTOCOL', least: 1, most: 1 },
  options: { output: { type: 'string', short: 'o', value: 'FILE.pdf', required: true } },
  shape,
  run({ names: [given = ''], text }) {
    const { protocol, disk } = findProtocol(given)
    const file = placeFor(text('output') ?? '')
    const at = systemClock.now()
    const now = localTime(at, systemClock.offsetMinutes(at))
    const { bytes, pages } = renderForm({ protocol, hash: disk.hash, now })
    write(file, bytes)
    return { value: { file, pages }, lines: [say('form.made', { file, pages })], exit: 0 }
  },
})

/** Where the file is to lie; nothing is set before it is known that it can. */
function placeFor(given: string): string {
  const file = userPath(given)
  if (!existsSync(dirname(file))) throw new HostProblem('form.no_folder', { folder: dirname(file) })
  if (existsSync(file) && statSync(file).isDirectory()) throw new HostProblem('form.is_folder', { given })
  return file
}

function write(file: string, bytes: Buffer): void {
  try {
    writeFileSync(file, bytes)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new HostProblem('form.not_written', { file, reason })
  }
}
