/**
 * Mutation testing: `npm run long -- mutation` tries every mutant, which takes a night; `EVENHAND_MUTANTS=60` tries so
 * many of each area, drawn by a seed. Those that no test noticed are told with their places; docs/SURVIVORS.md groups
 * those that were seen by their cause.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { AREAS, type AreaName, mutantsIn, ROOT } from '../mutation/areas.ts'
import { wilson } from '../mutation/sample.ts'
import { type Outcome, tryMutants } from '../mutation/try-mutants.ts'

const SEED = 20_261_201
const A_DAY = 86_400_000
const size = Number(process.env.EVENHAND_MUTANTS ?? Number.POSITIVE_INFINITY)

const short = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 90)
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`

function inWords({ mutant, end }: Outcome): string {
  const { file, line, operator, start, end: to, instead } = mutant
  const was = short(readFileSync(join(ROOT, file), 'utf8').slice(start, to))
  return `${end}: ${file}:${line} ${operator}: ${was} -> ${short(instead)}`
}

describe('small changes of the program are noticed by its tests', () => {
  test.each(Object.keys(AREAS) as AreaName[])('%s', { timeout: A_DAY }, async (area) => {
    const all = mutantsIn(area).length
    let tried = 0
    const outcomes = await tryMutants(area, size, SEED, (outcome) => {
      tried += 1
      console.log(`${area} ${tried} ${inWords(outcome)}`)
    })
    const clear = outcomes.filter(({ end }) => end !== 'unclear')
    const noticed = clear.filter(({ end }) => end === 'killed' || end === 'never ended').length
    const [low, high] = wilson(noticed, clear.length)
    const which = clear.length < all ? `a sample of ${clear.length} of ${all}` : `all ${all}`
    const share = percent(noticed / clear.length)
    console.log(
      `${area}: ${which} mutants, ${noticed} noticed, ${share} (95 %: ${percent(low)} to ${percent(high)})`,
    )
    expect(clear.length).toBeGreaterThan(outcomes.length / 2)
    // A sample fails only when the whole would be below the least share as good as surely.
    expect(high).toBeGreaterThanOrEqual(AREAS[area].least)
  })
})
