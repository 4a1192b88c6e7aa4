/** From the words after `evenhand` to a command and what it was given. */
import { parseArgs } from 'node:util'
import { PROGRAM } from '../../program.ts'
import { nearest } from '../nearest.ts'
import { HostProblem } from '../problem.ts'
import type { Command, Given } from './command.ts'

export interface Asked {
  readonly command: Command
  readonly given: Given
  readonly json: boolean
  readonly help: boolean
}

/** Options that every command has. */
const EVERYWHERE = { json: { type: 'boolean' }, help: { type: 'boolean' } } as const

export function findCommand(commands: ReadonlyMap<string, Command>, name: string): Command {
  const found = commands.get(name)
  if (found) return found
  const known = [...commands.keys()]
  throw new HostProblem('command.unknown', {
    given: name,
    meant: nearest(name, known) ?? 'none',
    commands: known.join(', '),
  })
}

/** @throws HostProblem for an unknown option, a missing or impossible value, too few or too many names */
export function readCommand(command: Command, words: readonly string[]): Asked {
  const options: Command['options'] = { ...command.options, ...EVERYWHERE }
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(
      Object.entries(options).map(([name, { type, short }]) => [name, short ? { type, short } : { type }]),
    ),
    strict: false,
    tokens: true,
  })
  const names: string[] = []
  const values = new Map<string, string | null>()
  for (const token of tokens) {
    if (token.kind === 'positional') names.push(token.value)
    if (token.kind !== 'option') continue
    checkOption(command, options, token.name, token.rawName, token.value)
    values.set(token.name, token.value ?? null)
  }
  const given: Given = {
    names,
    text: (option) => values.get(option) ?? null,
    flag: (option) => values.has(option),
  }
  const help = given.flag('help')
  if (!help) checkComplete(command, given)
  return { command, given, json: given.flag('json'), help }
}

function checkOption(
  command: Command,
  options: Command['options'],
  name: string,
  written: string,
  value: string | undefined,
): void {
  const option = Object.hasOwn(options, name) ? options[name] : undefined
  if (!option) {
    throw new HostProblem('command.unknown_option', {
      given: written,
      command: command.name,
      meant: nearest(name, Object.keys(options)) ?? 'none',
      usage: usageOf(command),
    })
  }
  if (option.type === 'string' && !value)
    throw new HostProblem('command.value_missing', { option: name, usage: usageOf(command) })
  if (option.type === 'boolean' && value !== undefined)
    throw new HostProblem('command.value_unwanted', { option: name })
  if (option.oneOf && value !== undefined && !option.oneOf.includes(value))
    throw new HostProblem('command.value_not_of', { option: name, given: value, of: option.oneOf.join(', ') })
}

function checkComplete(command: Command, given: Given): void {
  const { least, most } = command.names
  const [spare] = given.names.slice(most)
  if (given.names.length < least)
    throw new HostProblem('command.name_missing', { command: command.name, usage: usageOf(command) })
  if (spare !== undefined)
    throw new HostProblem('command.name_unwanted', { given: spare, usage: usageOf(command) })
  for (const [option, { required }] of Object.entries(command.options))
    if (required && !given.flag(option))
      throw new HostProblem('command.option_missing', { option, usage: usageOf(command) })
}

/** `<program> compare PROTOCOL --score ID … [--json]` */
export function usageOf({ name, names, options }: Command): string {
  const written = Object.entries(options).map(([option, { value, short, oneOf, required }]) => {
    const text = [
      short ? `-${short}` : `--${option}`,
      value || oneOf ? ` ${value ?? oneOf?.join('|')}` : '',
    ].join('')
    return required ? text : `[${text}]`
  })
  return [PROGRAM.command, name, names.usage, ...written, '[--json]'].filter(Boolean).join(' ')
}
