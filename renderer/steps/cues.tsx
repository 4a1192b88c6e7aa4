import { say } from '../words/index.ts'
import './steps.css'

interface Cue {
  readonly by: 'said' | 'seen' | null
  readonly text: string
}

/** What starts the clock and what stops it, told apart: what the examiner says, what the examiner sees. */
export function Cues({ start, stop }: { readonly start?: Cue; readonly stop?: Cue }) {
  return (
    <dl className="step-cues">
      {start === undefined ? null : <OneCue title={say('steps.cue.start')} cue={start} />}
      {stop === undefined ? null : <OneCue title={say('steps.cue.stop')} cue={stop} />}
    </dl>
  )
}

function OneCue({ title, cue }: { readonly title: string; readonly cue: Cue }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>{say(`steps.cue.${cue.by ?? 'told'}`, { text: cue.text })}</dd>
    </div>
  )
}
