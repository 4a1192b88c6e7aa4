/** What the tests of one text against another have in common. */
import { bool, none, trialsOf } from './datum.ts'
import type { Complain } from './formula.ts'
import { missingAmong } from './formula.ts'
import { BOOL, describe, type Typed } from './units-of-types.ts'
import type { Datum } from './types.ts'

export function checkTextTest(args: readonly Typed[], complain: Complain, use: string) {
  if (args.length !== 2)
    return complain('wrong_arguments', 'This takes one text in parentheses.', `Write ${use}.`)
  const wrong = args.find((arg) => arg.type.is !== 'text')
  if (wrong !== undefined)
    return complain('wrong_type', `This compares texts, not ${describe(wrong.type)}.`, `Write ${use}.`, wrong)
  return { type: BOOL, args: args.map((arg) => arg.term) }
}

export const textTest =
  (test: (text: string, part: string) => boolean) =>
  (args: readonly Datum[]): Datum => {
    const [text, part] = args
    if (text?.is === 'text' && part?.is === 'text')
      return bool(test(text.text, part.text), trialsOf(text, part))
    return missingAmong(args) ?? none('no_rows')
  }
