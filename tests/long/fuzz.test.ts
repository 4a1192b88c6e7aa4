/** Two hundred thousand mutated protocol files: `npm run long -- fuzz`. */
import { expect, test } from 'vitest'
import { readMutated } from '../fuzz/read-mutated.ts'

const CASES = 200_000
const AT_A_TIME = 2000

test('two hundred thousand files that nobody would write', () => {
  let sound = 0
  let slowest = 0
  for (let from = 0; from < CASES; from += AT_A_TIME) {
    // Said beforehand: of a case that never ends, this tells where to look.
    console.log(`from case ${from}`)
    const findings = readMutated(from, AT_A_TIME)
    expect(findings.broken).toEqual([])
    sound += findings.sound
    slowest = Math.max(slowest, findings.slowest)
  }
  console.log(`${CASES} files: ${sound} sound, the slowest took ${slowest.toFixed(2)} s of the processor`)
})
