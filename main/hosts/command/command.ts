/** What a command of the command line is. Each file in `commands/` exports one and is found by listing. */
import type { z } from 'zod'
import type { HostWord } from '../words.ts'

export interface Option {
  readonly type: 'string' | 'boolean'
  /** What its value is, in the usage line: `N`, `PATH`. */
  readonly value?: string
  /** One letter that means the same: `-o`. */
  readonly short?: string
  readonly required?: boolean
  readonly oneOf?: readonly string[]
}

export interface Given {
  /** What is not an option, in its order. */
  readonly names: readonly string[]
  text(option: string): string | null
  flag(option: string): boolean
}

export interface Outcome<T> {
  /** What `--json` prints; fits the command's shape. */
  readonly value: T
  /** What people read instead, a line each. */
  readonly lines: readonly string[]
  /** 0: fine. 1: problems were found. What could not run at all is thrown and ends with 2. */
  readonly exit: 0 | 1
}

export interface Command<S extends z.ZodType = z.ZodType> {
  readonly name: string
  readonly summary: HostWord
  /** The usage of what is not an option, such as `PATH…`, and how many there must be. */
  readonly names: { readonly usage: string; readonly least: number; readonly most: number }
  readonly options: Readonly<Record<string, Option>>
  /** The shape of the output with `--json`; JSON lines where `lines` is set. */
  readonly shape: S
  /** Each item of the value is printed on a line of its own, with `--json` and without. */
  readonly jsonLines?: true
  run(given: Given): Promise<Outcome<z.infer<S>>> | Outcome<z.infer<S>>
}

export function command<S extends z.ZodType>(of: Command<S>): Command<S> {
  return of
}
