/**
 * The ladder of monofilaments against its own law. Seen, Birke 2000: the marking is the logarithm of ten times the
 * force in milligrams. Labels and markings agree for the light filaments, and part at the heavy end, as collected.
 */
import { parse } from 'yaml'
import { expect, test } from 'vitest'
import { fileOf } from '../library/folders.ts'

interface Filament {
  readonly marking: number
  readonly force: string
  readonly presses: number
}

const { lists } = parse(fileOf('touch_threshold', 'protocol.yaml')) as {
  readonly lists: Readonly<Record<'five_pieces' | 'twenty_pieces', readonly Filament[]>>
}

const label = ({ force }: Filament): number => Number.parseFloat(force)

/** Force in gf worked back from a marking: 10^marking tenths of a milligram. */
const worked = ({ marking }: Filament): number => 10 ** marking / 10 / 1000

test('labels up to 26 gf lie within a tenth or so of the force that their marking means, but the lightest', () => {
  for (const filament of lists.twenty_pieces.slice(1).filter((each) => label(each) <= 26)) {
    expect(Math.abs(worked(filament) / label(filament) - 1)).toBeLessThan(0.32)
  }
})

test.each([
  [2.83, 0.0676],
  [3.61, 0.407],
  [4.31, 2.04],
  [5.88, 75.9],
  [6.65, 447],
])('marking %s means %s gf', (marking, force) => {
  const filament = lists.twenty_pieces.find((each) => each.marking === marking)
  expect(filament && worked(filament)).toBeCloseTo(force, force < 1 ? 3 : force < 10 ? 1 : 0)
})

test('the heavy end parts: 300 gf on the label of 6.65, 60 on that of 5.88', () => {
  const heavy = lists.twenty_pieces.filter(({ marking }) => marking === 5.88 || marking === 6.65)
  expect(heavy.map(label)).toEqual([60, 300])
})

test('twenty pieces rise in marking and force; the five are among them; three touches up to 4.08, one beyond', () => {
  expect(lists.twenty_pieces).toHaveLength(20)
  const markings = lists.twenty_pieces.map(({ marking }) => marking)
  expect(markings).toEqual(markings.toSorted((a, b) => a - b))
  const forces = lists.twenty_pieces.map(label)
  expect(forces).toEqual(forces.toSorted((a, b) => a - b))
  expect(lists.five_pieces.map(({ marking }) => marking)).toEqual([2.83, 3.61, 4.31, 4.56, 6.65])
  for (const five of lists.five_pieces) expect(lists.twenty_pieces).toContainEqual(five)
  for (const { marking, presses } of lists.twenty_pieces) expect(presses).toBe(marking <= 4.08 ? 3 : 1)
})
