import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { Section } from '../../parts/page.tsx'
import { tellTime } from '../../steps/tell.ts'
import { tellRules } from '../../steps/tell-rules.ts'
import { say } from '../../words/index.ts'

type Told = Pick<AdministrationView, 'rules' | 'stops' | 'pauses' | 'remarks'>

interface LinesProps {
  readonly title: string
  /** What tells a line from the others, such as its moment, and its words. */
  readonly lines: readonly (readonly [string, string])[]
}

function Lines({ title, lines }: LinesProps) {
  if (lines.length === 0) return null
  return (
    <Section title={title}>
      <ul className="result-list">
        {lines.map(([at, words]) => (
          <li key={at}>{words}</li>
        ))}
      </ul>
    </Section>
  )
}

const tellStop = ({ ends, reason, pain, done, at }: Told['stops'][number]): string =>
  say('result.stop', { ends, reason, pain: pain ?? 'none', done: done || 'none', time: tellTime(at) })

const tellPause = ({ reason, from, to }: Told['pauses'][number]): string =>
  say('result.pause', { reason, from: tellTime(from), to: to === null ? 'none' : tellTime(to) })

/** What was told while the test was given: what rules did, stops for the client's sake, pauses, remarks. */
export function AlongTheWay({ rules, stops, pauses, remarks }: Told) {
  return (
    <>
      <Lines title={say('result.rules')} lines={tellRules(rules).map((words) => [words, words])} />
      <Lines title={say('result.stops')} lines={stops.map((stop) => [stop.at, tellStop(stop)])} />
      <Lines title={say('result.pauses')} lines={pauses.map((pause) => [pause.from, tellPause(pause)])} />
      <Lines
        title={say('result.remarks')}
        lines={remarks.map(({ text, at }) => [at, say('result.remark', { text, time: tellTime(at) })])}
      />
    </>
  )
}
