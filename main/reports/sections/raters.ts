import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { whenWho } from '../figures.ts'
import type { ReportInput } from '../input.ts'
import { type Block, heading, lines } from '../page.ts'
import { say } from '../words.ts'

type Rater = AdministrationView['raters'][number]

function tellRater({ text: rater, later, toCome }: Rater): readonly string[] {
  if (later.length === 0 && toCome === 0) return [say('rater.with_test', { rater })]
  return [
    ...later.map((one) => say('rater.later', { rater, when: whenWho(one) })),
    ...(toCome > 0 ? [say('rater.to_come', { rater, count: toCome })] : []),
  ]
}

/** Who rated when, where one may rate another day. */
export function ratersOf({ view: { raters } }: ReportInput): Block[] {
  return raters.length === 0 ? [] : [heading(say('raters')), ...lines(raters.flatMap(tellRater))]
}
