/** Tries a sample of an area's mutants on its tests, in a process that is started anew when a mutant never ends. */
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { type AreaName, mutantsIn, type Placed, ROOT } from './areas.ts'
import type { Plan, Told } from './attempts.ts'
import { sampled } from './sample.ts'

type End = 'killed' | 'never ended' | 'survived' | 'not reached' | 'unclear'

export interface Outcome {
  readonly mutant: Placed
  readonly end: End
}

type Try = Plan['tries'][number]

/** The first run's own time of a mutant's test files, so many times over, and what a start may take. */
const PATIENCE = 5
const START_MS = 60_000

/** Runs one plan and hands on what is told; `patience` says in how many ms something has to be told after a line. */
function carryOut(
  plan: Plan,
  folder: string,
  patience: (told: Told | undefined) => number,
  hear: (told: Told) => void,
): Promise<'whole' | 'stopped'> {
  const file = join(folder, 'plan.json')
  writeFileSync(file, JSON.stringify(plan))
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(import.meta.dirname, 'attempts.ts'), file], {
      cwd: ROOT,
      stdio: ['ignore', 'pipe', 'ignore'],
      // Without what the test runner around this one says to its own workers.
      env: { PATH: process.env.PATH },
    })
    const wait = (told: Told | undefined): NodeJS.Timeout =>
      setTimeout(() => child.kill('SIGKILL'), patience(told))
    let timer = wait(undefined)
    createInterface({ input: child.stdout }).on('line', (line) => {
      if (!line.startsWith('told ')) return
      const told = JSON.parse(line.slice('told '.length)) as Told
      clearTimeout(timer)
      hear(told)
      timer = wait(told)
    })
    child.on('close', (code, signal) => {
      clearTimeout(timer)
      if (code === 0) resolve('whole')
      else if (signal === 'SIGKILL') resolve('stopped')
      else reject(new Error(`The run of the mutants ended with ${code ?? signal}.`))
    })
  })
}

interface First {
  /** Test file -> its own time in ms. */
  readonly times: ReadonlyMap<string, number>
  /** Mutant -> the test files that come to its place. */
  readonly reaching: ReadonlyMap<number, readonly string[]>
}

/** The run with no mutant on: it has to be green, and says which test files come to which mutants. */
async function firstRun(area: AreaName, numbers: readonly number[], folder: string): Promise<First> {
  const notes = join(folder, 'notes.jsonl')
  const times = new Map<string, number>()
  const failed: string[] = []
  const hour = 3_600_000
  await carryOut(
    { area, numbers, notes, tries: [] },
    folder,
    () => hour,
    (told) => {
      if (!('file' in told)) return
      times.set(told.file, told.ms)
      if (!told.ok) failed.push(told.file)
    },
  )
  if (failed.length > 0) throw new Error(`These tests fail without a mutant: ${failed.join(', ')}`)
  const reaching = new Map<number, string[]>()
  for (const line of readFileSync(notes, 'utf8').trim().split('\n')) {
    const { file, reached } = JSON.parse(line) as { file: string; reached: readonly number[] }
    for (const number of reached) reaching.set(number, [...(reaching.get(number) ?? []), file])
  }
  return { times, reaching }
}

/** Tries all, in as many processes as it takes: one that is stopped is followed by one for the mutants after it. */
async function tryAll(
  plan: Plan,
  folder: string,
  times: ReadonlyMap<string, number>,
  ended: (number: number, end: End) => void,
): Promise<void> {
  const timeOf = ({ files }: Try): number => files.reduce((sum, file) => sum + (times.get(file) ?? 0), 0)
  let left = plan.tries
  while (left.length > 0) {
    let begun: number | undefined
    const patience = (told: Told | undefined): number => {
      const now = told && 'begun' in told ? left[0] : undefined
      return START_MS + (now ? timeOf(now) * PATIENCE : 0)
    }
    const how = await carryOut({ ...plan, tries: left }, folder, patience, (told) => {
      if ('begun' in told) begun = told.begun
      if (!('number' in told)) return
      begun = undefined
      left = left.slice(1)
      ended(told.number, told.end)
    })
    if (how === 'whole') return
    if (begun === undefined) throw new Error('The run of the mutants stood still between two of them.')
    ended(begun, 'never ended')
    left = left.slice(1)
  }
}

/**
 * Tries `size` of an area's mutants, drawn by `seed`; `hear` is told of each as it ends. Throws when the area's tests
 * fail without a mutant, as every mutant would then seem to be noticed.
 */
export async function tryMutants(
  area: AreaName,
  size: number,
  seed: number,
  hear: (outcome: Outcome) => void,
): Promise<readonly Outcome[]> {
  const mutants = sampled(mutantsIn(area), size, seed)
  const numbers = mutants.map(({ number }) => number)
  const folder = mkdtempSync(join(tmpdir(), 'mutants-'))
  try {
    const { times, reaching } = await firstRun(area, numbers, folder)
    const quickest = (files: readonly string[]): readonly string[] =>
      files.toSorted((a, b) => (times.get(a) ?? 0) - (times.get(b) ?? 0))
    const ends = new Map<number, End>()
    const ended = (number: number, end: End): void => {
      ends.set(number, end)
      const mutant = mutants.find((each) => each.number === number)
      if (mutant) hear({ mutant, end })
    }
    const tries: Try[] = []
    for (const { number, once } of mutants) {
      // Modules are loaded once for all test files: which of them depend on what is worked out then isn't known.
      const files = once ? [...times.keys()] : (reaching.get(number) ?? [])
      if (files.length === 0) ended(number, 'not reached')
      else tries.push({ number, files: quickest(files) })
    }
    await tryAll({ area, numbers, notes: '', tries }, folder, times, ended)
    return mutants.map((mutant) => ({ mutant, end: ends.get(mutant.number) ?? 'not reached' }))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
