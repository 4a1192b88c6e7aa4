/** What both windows of the program can be started with. */
import { isAbsolute, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { HostProblem } from './problem.ts'
import { nearest } from './nearest.ts'

export interface HostArguments {
  readonly demo: boolean
  /** Absolute; null: the platform's own data folder. */
  readonly records: string | null
  /** 0: any free port. */
  readonly port: number
  readonly open: boolean
}

const OPTIONS = {
  demo: { type: 'boolean' },
  records: { type: 'string' },
  port: { type: 'string' },
  'no-open': { type: 'boolean' },
} as const

/** @throws HostProblem for an option that isn't one, or a value that can't be */
export function readArguments(given: readonly string[]): HostArguments {
  const { tokens } = parseArgs({ args: [...given], options: OPTIONS, strict: false, tokens: true })
  const values = new Map<string, string | undefined>()
  for (const token of tokens) {
    if (token.kind === 'option-terminator') continue
    const name = token.kind === 'option' ? token.name : token.value
    if (token.kind === 'positional' || !Object.hasOwn(OPTIONS, name)) throw unknown(name)
    values.set(name, token.value)
  }
  return {
    demo: values.has('demo'),
    records: values.has('records') ? recordsPath(values.get('records')) : null,
    port: values.has('port') ? portNumber(values.get('port')) : 0,
    open: !values.has('no-open'),
  }
}

function unknown(name: string): HostProblem {
  const options = Object.keys(OPTIONS)
  return new HostProblem('start.unknown_option', {
    given: name,
    meant: nearest(name, options) ?? 'none',
    options: options.map((option) => `--${option}`).join(', '),
  })
}

function recordsPath(given: string | undefined): string {
  if (!given) throw new HostProblem('start.records_without_path', {})
  return isAbsolute(given) ? given : resolve(process.env.INIT_CWD ?? process.cwd(), given)
}

function portNumber(given: string | undefined): number {
  const port = /^\d{1,5}$/.test(given ?? '') ? Number(given) : Number.NaN
  if (!(port <= 65_535)) throw new HostProblem('start.bad_port', { given: given ?? '' })
  return port
}
