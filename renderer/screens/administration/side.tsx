import type { AdministrationView, StepView, Trial } from '../../../protocols/runner/view.ts'
import { capOf } from '../../input/keys-shown.ts'
import { KeyCap } from '../../parts/key-cap.tsx'
import { tellOutcome, tellReadings, tellSide } from '../../steps/tell.ts'
import { say } from '../../words/index.ts'
import { offers } from './intents.ts'

interface HappeningsProps {
  readonly view: AdministrationView
  readonly step: StepView
  readonly keys: Readonly<Record<string, string | null>>
  readonly onHappening: (name: string) => void
}

/** What may be seen, what to do then, what becomes of the trial; each with its key. */
export function Happenings({ view, step, keys, onHappening }: HappeningsProps) {
  if (step.happenings.length === 0 || !offers(view, 'happened')) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.happenings')}</h2>
      <ul className="giving-happenings">
        {step.happenings.map((each) => (
          <li key={each.name}>
            <button
              type="button"
              className="giving-happening"
              onPointerDown={(event) => event.preventDefault()}
              onClick={() => onHappening(each.name)}
            >
              <span>
                {each.seen}
                <span className="giving-then">
                  {[each.do, say(`administration.becomes.${each.becomes}`)].filter(Boolean).join(' ')}
                </span>
              </span>
              {keys[each.name] ? <KeyCap code={capOf(keys[each.name] ?? '')} /> : null}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}

export function MaySay({ step }: { readonly step: StepView }) {
  if (step.maySay.length === 0) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.may_say')}</h2>
      <ul>
        {step.maySay.map((text) => (
          <li key={text} className="giving-say">
            {text}
          </li>
        ))}
      </ul>
    </section>
  )
}

function tellTrial(trial: Trial): string {
  if (trial.status === 'void') return say('administration.trial_void')
  const readings = tellReadings(trial).map(({ words }) => words)
  return readings.length === 0 ? tellOutcome(trial.outcome) : readings.join(', ')
}

/** The trials given so far, newest last, each with its hand. */
export function TrialsSoFar({ trials }: { readonly trials: readonly Trial[] }) {
  const given = trials.filter((trial) => trial.status !== 'running')
  if (given.length === 0) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.trials')}</h2>
      <ol className="giving-trials">
        {given.map((trial) => (
          <li key={trial.id}>
            <span className="soft">
              {[tellSide(trial.place), trial.practice ? say('steps.practice') : '']
                .filter(Boolean)
                .join(' · ')}
            </span>
            <span className={trial.status === 'void' ? 'giving-void' : 'numbers'}>{tellTrial(trial)}</span>
          </li>
        ))}
      </ol>
    </section>
  )
}
