import type { Formula } from '../formula.ts'
import { checkTextTest, textTest } from '../text-test.ts'

/** Whether a text begins with another. */
const startsWith: Formula = {
  name: 'startsWith',
  use: "task.id.startsWith('near')",
  asMethod: true,
  check: (args, complain) => checkTextTest(args, complain, startsWith.use),
  apply: textTest((text, part) => text.startsWith(part)),
}
export default startsWith
