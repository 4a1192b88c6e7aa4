/** One text that holds many mutants, of which one at a time is switched on: it is read and translated only once. */
import { type Mutant, statementStarts } from './mutants.ts'

export interface Numbered extends Mutant {
  /** From 1; 0 is the module as it stands. */
  readonly number: number
}

/** What a switched text calls: whether this mutant is on. It also notes that its place was come to. */
const SWITCH = 'globalThis.mutantOn'

interface Host {
  readonly start: number
  readonly end: number
  readonly block: boolean
  readonly mutants: Numbered[]
}

/** The hosts that lie within each other, outermost first. */
function hostsOf(mutants: readonly Numbered[]): readonly Host[] {
  const hosts = new Map<string, Host>()
  for (const mutant of mutants) {
    const { start, end, block } = mutant
    const key = `${start} ${end}`
    const host = hosts.get(key) ?? { start, end, block, mutants: [] }
    host.mutants.push(mutant)
    hosts.set(key, host)
  }
  return [...hosts.values()].sort((a, b) => a.start - b.start || b.end - a.end)
}

/** The module's text with every one of its mutants behind a switch; with none switched on it does what it did. */
export function switchable(text: string, mutants: readonly Numbered[]): string {
  const starts = statementStarts(text)
  const hosts = hostsOf(mutants)
  let next = 0

  const upTo = (from: number, to: number): string => {
    let written = ''
    let at = from
    for (let host = hosts[next]; host && host.start < to; host = hosts[next]) {
      next += 1
      written += text.slice(at, host.start) + chosen(host)
      at = host.end
    }
    return written + text.slice(at, to)
  }
  const chosen = (host: Host): string => {
    const inner = upTo(host.start, host.end)
    if (host.block) {
      const on = host.mutants.map(({ number }) => `${SWITCH}(${number})`).join('||')
      return `{if(${on}){}else${inner}}`
    }
    const others = host.mutants.map(({ number, instead }) => `${SWITCH}(${number})?(${instead}):`).join('')
    return `${starts.has(host.start) ? '0,' : ''}(${others}(${inner}))`
  }
  return upTo(0, text.length)
}
