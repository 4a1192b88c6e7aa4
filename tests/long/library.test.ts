/** Every test of the library given whole at the desk, with the presses that each takes: `npm run long -- library`. */
import { givenWhole } from '../desk/given-whole.ts'
import { TESTS } from '../library/folders.ts'

givenWhole(TESTS, (line) => console.log(line))
