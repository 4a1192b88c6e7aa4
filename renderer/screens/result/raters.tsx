import { showDate } from '../../app/dates.ts'
import { go } from '../../app/route.ts'
import { Button } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Section } from '../../parts/page.tsx'
import { tellTime } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import type { Output } from '../../../main/contract/procedures.ts'

type View = Output<'administrations.view'>['view']
type Rater = View['raters'][number]

interface Props {
  readonly view: View
  readonly store: 'records' | 'rehearsal'
}

/** Says of which raters grades are still to come, and leads to where they are given. */
export function GradesToCome({ view, store }: Props) {
  const left = view.raters.filter(({ toCome }) => toCome > 0)
  if (left.length === 0) return null
  return (
    <Notice tone="caution" title={say('result.to_rate', { raters: left.map(({ text }) => text).join(', ') })}>
      <Button onPress={() => go(`administration/${store}/${view.id}`)}>{say('result.to_rate.give')}</Button>
    </Notice>
  )
}

const tellLater = ({ text, later }: Rater): readonly string[] =>
  later.map(({ by, at }) =>
    say('result.rater.later', { rater: text, by, day: showDate(at.slice(0, 10)), time: tellTime(at) }),
  )

function tellRater(rater: Rater): readonly string[] {
  const { text, later, toCome } = rater
  const left = toCome > 0 ? [say('result.rater.to_come', { rater: text, count: toCome })] : []
  return later.length + left.length === 0
    ? [say('result.rater.with_test', { rater: text })]
    : [...tellLater(rater), ...left]
}

/** Who rated when, where one may rate another day. */
export function Raters({ raters }: Pick<View, 'raters'>) {
  if (raters.length === 0) return null
  return (
    <Section title={say('result.raters')}>
      <ul className="result-list">
        {raters.flatMap(tellRater).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </Section>
  )
}
