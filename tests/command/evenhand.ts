import { runCommand } from '../../main/hosts/command/run.ts'

export interface Ran {
  readonly code: number
  readonly out: string
  readonly err: string
}

/** Runs a command as the entry does, and keeps what it printed. */
export async function evenhand(...words: string[]): Promise<Ran> {
  const out: string[] = []
  const err: string[] = []
  const code = await runCommand(words, { out: (line) => out.push(line), err: (line) => err.push(line) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

export const jsonOf = ({ out }: Ran): unknown => JSON.parse(out)
