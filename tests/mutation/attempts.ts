/**
 * Tries mutants one after the other in one process, so that modules are read and translated once. Given a plan as a
 * file, it writes a line of JSON for each thing it knows; whoever started it stops it when a mutant never ends.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'
import {
  BaseSequencer,
  createVitest,
  type TestModule,
  type TestSpecification,
  type Vitest,
} from 'vitest/node'
import { AREAS, type AreaName, mutantsIn, type Placed, ROOT } from './areas.ts'
import { switchable } from './switchable.ts'

export interface Plan {
  readonly area: AreaName
  /** All that are in the sample; their switches are all in the text. */
  readonly numbers: readonly number[]
  /** Where the first run, with none switched on, notes what each test file came to. Empty: that is known. */
  readonly notes: string
  /** What is to be tried: a mutant, and the test files in their order. */
  readonly tries: readonly { readonly number: number; readonly files: readonly string[] }[]
}

/** What is told on the way: the first run's files, then a mutant's beginning and its end. */
export type Told =
  | { readonly file: string; readonly ok: boolean; readonly ms: number }
  | { readonly begun: number }
  | { readonly number: number; readonly end: 'killed' | 'survived' | 'unclear' }

const tell = (told: Told): void => {
  process.stdout.write(`told ${JSON.stringify(told)}\n`)
}

const switches = (mutants: readonly Placed[]): Plugin => ({
  name: 'mutants',
  enforce: 'pre',
  transform: (text, id) => {
    const own = mutants.filter(({ file }) => join(ROOT, file) === id)
    return own.length === 0 ? null : { code: switchable(text, own), map: null }
  },
})

/** Keeps the order that the plan gives. */
class AsPlanned extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve(files)
  }
}

const open = (area: AreaName, mutants: readonly Placed[]): Promise<Vitest> =>
  createVitest(
    {
      config: false,
      root: ROOT,
      watch: false,
      include: [...AREAS[area].tests],
      setupFiles: ['tests/mutation/active.ts', 'tests/seed.ts'],
      pool: 'threads',
      // Modules stay loaded from one test file to the next; every mutant has a worker of its own.
      isolate: false,
      // Loading them is most of the work: one worker does it once a mutant.
      maxWorkers: 1,
      sequence: { sequencer: AsPlanned },
      // The text of a module is another one with each plan, which the cache on the disk can't know.
      fsModuleCache: false,
      testTimeout: 120_000,
      reporters: [{}],
      silent: true,
    },
    { plugins: [switches(mutants)] },
  )

async function run(vitest: Vitest, files: readonly string[]): Promise<readonly TestModule[]> {
  const project = vitest.getRootProject()
  const { testModules } = await vitest.runTestSpecifications(
    files.map((file) => project.createSpecification(file)),
  )
  // Those of earlier runs are told again with every run.
  return testModules.filter(({ moduleId }) => files.includes(moduleId))
}

/** Unclear: no test failed, and yet not every file was run to its end, as on a machine that is short of everything. */
function endOf(modules: readonly TestModule[], asked: number): 'killed' | 'survived' | 'unclear' {
  if (modules.some((module) => module.state() === 'failed')) return 'killed'
  const passed = modules.filter((module) => module.state() === 'passed').length
  return passed === asked ? 'survived' : 'unclear'
}

const [planned = ''] = process.argv.slice(2)
const plan = JSON.parse(readFileSync(planned, 'utf8')) as Plan
const chosen = new Set(plan.numbers)
const vitest = await open(
  plan.area,
  mutantsIn(plan.area).filter(({ number }) => chosen.has(number)),
)
vitest.provide('mutant', 0)
vitest.provide('notes', plan.notes)
if (plan.notes !== '') {
  const all = (await vitest.globTestSpecifications()).map(({ moduleId }) => moduleId)
  for (const module of await run(vitest, all)) {
    tell({ file: module.moduleId, ok: module.ok(), ms: module.diagnostic().duration })
  }
}
vitest.provide('notes', '')
vitest.config.bail = 1
for (const { number, files } of plan.tries) {
  tell({ begun: number })
  vitest.provide('mutant', number)
  const modules = await run(vitest, files)
  tell({ number, end: endOf(modules, files.length) })
}
await vitest.close()
process.exit(0)
