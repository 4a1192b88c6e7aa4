/** The change figures of the library agree with each other where their sources allow it. */
import { parse } from 'yaml'
import { expect, test } from 'vitest'
import { fileOf } from '../library/folders.ts'

interface Figure {
  readonly population: string
  readonly sem?: number | string
  readonly mdc95?: number | string
}

const figures = (name: string): readonly Figure[] =>
  (parse(fileOf(name, 'protocol.yaml')) as { change: readonly Figure[] }).change

const size = (name: string, kind: 'sem' | 'mdc95', population: RegExp): number => {
  const found = figures(name).find(
    (figure) => figure[kind] !== undefined && population.test(figure.population),
  )
  return Number.parseFloat(String(found?.[kind]))
}

// Seen: smallest real differences in the abstract of Chen 2009, SEMs on a secondary page. MDC95 = 1.96 x sqrt2 x SEM.
test.each([/more affected/, /less affected/])(
  'box and block after stroke, %s hand: MDC95 follows from the SEM',
  (hand) => {
    const fromSem = 1.96 * Math.SQRT2 * size('box_and_block', 'sem', hand)
    expect(Math.abs(fromSem - size('box_and_block', 'mdc95', hand))).toBeLessThan(0.1)
  },
)

// Seen, abstract of Hervault 2017: SEM and MDC in per cent; the level of 95 is inferred because this holds.
test.each([/dominant hand/, /other hand/])(
  'nine-hole peg in multiple sclerosis, %s: both figures mean the same time',
  (hand) => {
    const seconds = 1.96 * Math.SQRT2 * size('nine_hole_peg', 'sem', hand)
    const meanTime = seconds / (size('nine_hole_peg', 'mdc95', hand) / 100)
    expect(meanTime).toBeGreaterThan(20)
    expect(meanTime).toBeLessThan(30)
  },
)
