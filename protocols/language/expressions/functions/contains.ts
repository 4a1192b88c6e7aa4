import type { Formula } from '../formula.ts'
import { checkTextTest, textTest } from '../text-test.ts'

/** Whether a text has another within it. */
const contains: Formula = {
  name: 'contains',
  use: "task.say.contains('thick')",
  asMethod: true,
  check: (args, complain) => checkTextTest(args, complain, contains.use),
  apply: textTest((text, part) => text.includes(part)),
}
export default contains
