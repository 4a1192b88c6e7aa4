/** What is mutated, the tests that have to notice it, and the least share that they have to notice. */
import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Mutant, mutantsOf } from './mutants.ts'

export const ROOT = join(import.meta.dirname, '../..')

export interface Area {
  readonly modules: string
  /** The tests that are nearest. Those of the rest of the house would notice more, so a share is a lower bound. */
  readonly tests: readonly string[]
  readonly least: number
}

export const AREAS = {
  runner: {
    modules: 'protocols/runner/**/*.ts',
    tests: ['tests/runner/*.test.ts', 'tests/steps/*.test.ts', 'tests/sections/*.test.ts'],
    least: 0.85,
  },
  scoring: {
    modules: 'protocols/scoring/**/*.ts',
    tests: ['tests/scoring/*.test.ts', 'tests/outside/{statistics*,lms}.test.ts'],
    least: 0.85,
  },
  checks: {
    modules: 'protocols/language/checks/*.ts',
    tests: ['tests/language/{checks,corpus,expression-problems,guide,words}.test.ts'],
    least: 0.75,
  },
} as const satisfies Readonly<Record<string, Area>>

export type AreaName = keyof typeof AREAS

export interface Placed extends Mutant {
  readonly file: string
  /** Its number in the whole area, from 1: the same as long as the modules are the same. */
  readonly number: number
}

/** All mutants of an area, in the order of their files and places. */
export function mutantsIn(area: AreaName): readonly Placed[] {
  return globSync(AREAS[area].modules, { cwd: ROOT })
    .toSorted()
    .flatMap((file) =>
      mutantsOf(readFileSync(join(ROOT, file), 'utf8')).map((mutant) => ({ ...mutant, file })),
    )
    .map((mutant, index) => ({ ...mutant, number: index + 1 }))
}
