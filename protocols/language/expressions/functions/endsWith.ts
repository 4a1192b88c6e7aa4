import type { Formula } from '../formula.ts'
import { checkTextTest, textTest } from '../text-test.ts'

/** Whether a text ends with another. */
const endsWith: Formula = {
  name: 'endsWith',
  use: "task.id.endsWith('thick')",
  asMethod: true,
  check: (args, complain) => checkTextTest(args, complain, endsWith.use),
  apply: textTest((text, part) => text.endsWith(part)),
}
export default endsWith
