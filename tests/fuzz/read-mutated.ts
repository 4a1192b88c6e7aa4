/** Reads cases by their numbers and holds each to what the reader promises of any text. */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Diagnostic } from '../../protocols/language/diagnostics.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import { runnerFor } from '../../protocols/runner/index.ts'
import { casesIn } from '../language/corpus.ts'
import { folderAt } from '../language/folders.ts'
import { mutated, type Seed, type Seeds } from './mutate.ts'

const LIBRARY = join(import.meta.dirname, '../../protocols/library')

const library: readonly Seed[] = readdirSync(LIBRARY, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => ({ name, folder: folderAt(join(LIBRARY, name)) }))

// What is left of a long protocol after its first lines is a text that breaks off: faulty by itself.
const seeds: Seeds = { sound: casesIn('sound'), faulty: [...casesIn('faulty'), ...library] }

/** No file of at most 150 lines may hold the reader longer, in seconds of the processor. */
const MOST_SECONDS = 1

export interface Findings {
  /** A sentence for each promise that a case broke, with the number that makes it again. */
  readonly broken: string[]
  sound: number
  slowest: number
}

const isPlaced = (one: Diagnostic): boolean =>
  one.line >= 1 && one.column >= 1 && one.message !== '' && one.mend !== '' && one.code !== 'check_crashed'

function promiseBroken(number: number, findings: Findings): string | null {
  const { protocol, diagnostics } = readProtocol(mutated(seeds, number))
  const odd = diagnostics.find((each) => !isPlaced(each))
  if (odd) return `has a diagnostic that says nothing or tells of a crash: ${JSON.stringify(odd)}`
  const isFaulty = diagnostics.some(({ severity }) => severity === 'error')
  if (isFaulty === (protocol !== null)) return 'is neither a protocol nor faulty, or both'
  if (protocol) {
    findings.sound += 1
    const runner = runnerFor(protocol)
    runner.view(runner.begin(), '0192f000-0000-7000-8000-000000000000')
  }
  return null
}

/** @param from the first number  @param count how many cases */
export function readMutated(from: number, count: number): Findings {
  const findings: Findings = { broken: [], sound: 0, slowest: 0 }
  for (let number = from; number < from + count; number += 1) {
    const begun = process.cpuUsage()
    try {
      const broken = promiseBroken(number, findings)
      if (broken !== null) findings.broken.push(`Case ${number} ${broken}`)
    } catch (error) {
      findings.broken.push(`Case ${number} threw: ${error instanceof Error ? error.stack : String(error)}`)
    }
    const { user } = process.cpuUsage(begun)
    const seconds = user / 1e6
    findings.slowest = Math.max(findings.slowest, seconds)
    if (seconds > MOST_SECONDS) findings.broken.push(`Case ${number} took ${seconds.toFixed(2)} s`)
  }
  return findings
}
