/** Set up before each test file of a mutation run: the switch, and a note of the mutants whose place was come to. */
import { appendFileSync } from 'node:fs'
import { afterAll, expect, inject } from 'vitest'

declare module 'vitest' {
  interface ProvidedContext {
    /** The mutant that is on; 0 for none. */
    mutant: number
    /** Where it is noted which were come to; empty for nowhere. */
    notes: string
  }
}

const active = inject('mutant')
const notes = inject('notes')
const reached = new Set<number>()

Object.assign(globalThis, {
  mutantOn: (number: number): boolean => {
    if (notes !== '') reached.add(number)
    return number === active
  },
})

afterAll(() => {
  if (notes === '') return
  appendFileSync(notes, `${JSON.stringify({ file: expect.getState().testPath, reached: [...reached] })}\n`)
})
