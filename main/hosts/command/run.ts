/** The same program without a screen: from words to output and exit code. */
import { z } from 'zod'
import '../../contract/jitless.ts'
import { protocolJsonSchema } from '../../../protocols/language/schema/json-schema.ts'
import { PROGRAM } from '../../program.ts'
import { HostProblem, problemOf } from '../problem.ts'
import { say } from '../words.ts'
import type { Command, Outcome } from './command.ts'
import { findCommand, readCommand, usageOf } from './read-command.ts'

const files = import.meta.glob<{ default: Command }>('./commands/*.ts', { eager: true })
const commands: ReadonlyMap<string, Command> = new Map(
  Object.values(files).map(({ default: command }) => [command.name, command]),
)

export interface Output {
  out(line: string): void
  err(line: string): void
}

function overview(): string {
  const list = [...commands.values()].map((one) => `  ${usageOf(one)}\n      ${say(one.summary)}`)
  return [say('command.about'), '', ...list, '', say('command.exits')].join('\n')
}

/** The JSON Schema (2020-12) of what a command prints with `--json`. */
function schemaOf(command: Command): string {
  return JSON.stringify(z.toJSONSchema(command.shape, { io: 'output' }), null, 2)
}

/** What `schema` shows of the protocol file itself, beside the commands. */
const PROTOCOL = 'protocol'

function linesOf({ shape, jsonLines }: Command, { value, lines }: Outcome<unknown>, json: boolean) {
  if (!json && !jsonLines) return lines
  const checked = shape.parse(value)
  return jsonLines && Array.isArray(checked)
    ? checked.map((line) => JSON.stringify(line))
    : [JSON.stringify(checked, null, 2)]
}

async function run([name, ...words]: readonly string[], print: Output['out']): Promise<0 | 1 | 2> {
  if (name === undefined || name === 'help' || name === '--help') {
    print(overview())
    return name === undefined ? 2 : 0
  }
  if (name === '--version') {
    print(`${PROGRAM.name} ${PROGRAM.version}`)
    return 0
  }
  if (name === 'schema') {
    const [of] = words
    if (of === undefined)
      throw new HostProblem('command.schema_of', { commands: [PROTOCOL, ...commands.keys()].join(', ') })
    print(
      of === PROTOCOL ? JSON.stringify(protocolJsonSchema(), null, 2) : schemaOf(findCommand(commands, of)),
    )
    return 0
  }
  const asked = readCommand(findCommand(commands, name), words)
  if (asked.help) {
    print(`${usageOf(asked.command)}\n${say(asked.command.summary)}`)
    return 0
  }
  const outcome = await asked.command.run(asked.given)
  for (const line of linesOf(asked.command, outcome, asked.json)) print(line)
  return outcome.exit
}

/**
 * Runs one command.
 * @param words what stands after `evenhand`
 * @returns the exit code: 0 fine, 1 problems were found, 2 it could not run, which `err` was told
 */
export async function runCommand(words: readonly string[], { out, err }: Output): Promise<0 | 1 | 2> {
  try {
    return await run(words, out)
  } catch (error) {
    const problem = problemOf(error)
    err(words.includes('--json') ? JSON.stringify({ error: problem }) : problem.message)
    return 2
  }
}
