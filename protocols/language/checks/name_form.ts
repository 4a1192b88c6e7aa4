import type { Check } from '../check.ts'
import { NAME } from '../schema/shapes.ts'

const FROM_KEYS = new Set('kit condition option list property happening source accommodation'.split(' '))

const mended = (name: string): string =>
  name
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^[^a-z]+|_+$/g, '')

/**
 * What it does: Names that the author gives as keys (kit, conditions and their options, lists and their
 * items' properties, happenings, sources, accommodations) begin with a small letter and hold small
 * letters, digits and _.
 *
 * Why it matters: A name stands in formulas, in text keys and in records for decades; one with a dash
 * would be read as a subtraction, one with a capital would be mistaken for another.
 *
 * Example:
 *     kit: { Peg-board: { text: Board } }
 *
 * Instead:
 *     kit: { peg_board: { text: Board } }
 */
export default {
  code: 'name_form',
  severity: 'error',
  needs: [],
  *run({ names }) {
    for (const { name, of, at } of names) {
      if (!FROM_KEYS.has(of) || NAME.test(name)) continue
      const better = mended(name)
      yield {
        at,
        message: `"${name}" is no name: a small letter comes first, then small letters, digits and _.`,
        mend: better === '' ? 'Write a word in small letters.' : `Write ${better}.`,
      }
    }
  },
} satisfies Check
