import { BUILT_IN } from '../../../protocols/language/schema/top.ts'
import type { AdministrationView, StepView, Trial } from '../../../protocols/runner/view.ts'
import { COMMAND_KEYS, type Command } from '../../input/keys.ts'
import { capOf } from '../../input/keys-shown.ts'
import { KeyCap } from '../../parts/key-cap.tsx'
import { tellOutcome, tellReadings, tellSide } from '../../steps/tell.ts'
import { tellRules } from '../../steps/tell-rules.ts'
import { say } from '../../words/index.ts'
import { offers } from './intents.ts'

type Happening = StepView['happenings'][number]

interface HappeningsProps {
  readonly view: AdministrationView
  readonly step: StepView
  readonly keys: Readonly<Record<string, string | null>>
  readonly onHappening: (name: string) => void
}

/** What is counted or noted while the trial goes on: each with its key, and what to do then. */
function Noted({
  each,
  keys,
  isOpen,
  onHappening,
}: { readonly each: Happening; readonly isOpen: boolean } & Pick<HappeningsProps, 'keys' | 'onHappening'>) {
  const key = keys[each.name] ?? null
  return (
    <button
      type="button"
      className="giving-happening"
      aria-disabled={!isOpen}
      // The focus stays on the stage, so that the main key never presses what the pointer pressed last.
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => (isOpen ? onHappening(each.name) : undefined)}
    >
      <span>
        {each.seen}
        {each.do === null ? null : <span className="giving-then">{each.do}</span>}
      </span>
      {key === null ? null : <KeyCap code={capOf(key)} />}
    </button>
  )
}

function Ended({
  title,
  command,
  happenings,
}: {
  readonly title: string
  readonly command: Command
  readonly happenings: readonly Happening[]
}) {
  if (happenings.length === 0) return null
  return (
    <section className="giving-part">
      <h2 className="giving-ended">
        {title}
        <KeyCap code={capOf(COMMAND_KEYS[command])} />
      </h2>
      <ul className="giving-if">
        {happenings.map(({ name, seen }) => (
          <li key={name}>{seen}</li>
        ))}
      </ul>
    </section>
  )
}

/** What changes nothing: shown for what to do then. */
function GoesOn({ happenings }: { readonly happenings: readonly Happening[] }) {
  if (happenings.length === 0) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.goes_on')}</h2>
      <ul className="giving-if">
        {happenings.map((each) => (
          <li key={each.name}>{[each.seen, each.do].filter(Boolean).join(' ')}</li>
        ))}
      </ul>
    </section>
  )
}

/** The happenings that have a key of their own: what is counted, and what the protocol gave a key. */
export const keyed = (step: StepView | null): readonly Happening[] =>
  step?.happenings.filter(({ becomes, key }) => becomes === 'tally' || key !== null) ?? []

const isBuiltIn = ({ name }: Happening): boolean => (BUILT_IN as readonly string[]).includes(name)

const isNoted = ({ becomes }: Happening): boolean => becomes === 'tally' || becomes === 'go-on'

/** What is counted or noted by its own key while the trial goes on. */
export function Counted({ view, step, keys, onHappening }: HappeningsProps) {
  const noted = keyed(step).filter(isNoted)
  if (noted.length === 0) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.happenings')}</h2>
      <ul className="giving-happenings">
        {noted.map((each) => (
          <li key={each.name}>
            <Noted each={each} keys={keys} isOpen={offers(view, 'happened')} onHappening={onHappening} />
          </li>
        ))}
      </ul>
    </section>
  )
}

/** What else may be seen: what changes nothing, what makes the trial void, what stops it. */
export function Events({ step }: Pick<HappeningsProps, 'step'>) {
  const noted = keyed(step).filter(isNoted)
  const of = (becomes: Happening['becomes']): readonly Happening[] =>
    step.happenings.filter((each) => each.becomes === becomes && !isBuiltIn(each))
  const goesOn = of('go-on').filter((each) => !noted.includes(each))
  if (goesOn.length + of('void').length + of('stop').length === 0) return null
  return (
    <div className="giving-events">
      <GoesOn happenings={goesOn} />
      <Ended title={say('administration.void_if')} command="void" happenings={of('void')} />
      <Ended title={say('administration.stop_if')} command="stop" happenings={of('stop')} />
    </div>
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

function tellTrial(trial: Trial, reasons: AdministrationView['voidReasons']): string {
  if (trial.status === 'void') {
    const reason = reasons.find(({ name }) => name === trial.void?.happening)?.seen ?? 'none'
    return say('administration.trial_void', { reason: reason.replace(/\.$/, '') })
  }
  const readings = tellReadings(trial).map(({ words }) => words)
  return readings.length === 0 ? tellOutcome(trial.outcome) : readings.join(', ')
}

/** The trials given so far, in their order, each with its hand; the client may read along. */
export function TrialsSoFar({ view: { trials, voidReasons } }: { readonly view: AdministrationView }) {
  const given = trials.filter((trial) => trial.status !== 'running')
  if (given.length === 0) return null
  return (
    <section className="giving-part giving-so-far">
      <h2>{say('administration.trials')}</h2>
      <ol className="giving-trials">
        {given.map((trial) => (
          <li key={trial.id}>
            <span className="giving-then">
              {[tellSide(trial.place), trial.practice ? say('steps.practice') : '']
                .filter(Boolean)
                .join(' · ')}
            </span>
            <span className={trial.status === 'void' ? 'giving-void' : 'numbers'}>
              {tellTrial(trial, voidReasons)}
            </span>
          </li>
        ))}
      </ol>
    </section>
  )
}

const tellLevel = ({ id, text, accepted }: NonNullable<StepView['levels']>[number]): string =>
  say('administration.level', {
    level: text ?? id.replaceAll('_', ' '),
    accepted: accepted === null ? 'unknown' : accepted ? 'yes' : 'no',
  })

/** The levels of a ladder that were given before this one, each with whether it was accepted. */
export function LevelsSoFar({ step }: { readonly step: StepView }) {
  const { levels = [] } = step
  if (levels.length === 0) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.levels')}</h2>
      <ol className="giving-if">
        {levels.map((level, index) => (
          <li key={`${level.id} ${String(index)}`}>{tellLevel(level)}</li>
        ))}
      </ol>
    </section>
  )
}

/** What the protocol's rules and sections did, and which would have judged otherwise after a correction. */
export function RulesSoFar({ view }: { readonly view: AdministrationView }) {
  const told = tellRules(view.rules)
  const { wouldDiffer } = view
  if (told.length === 0 && wouldDiffer.length === 0) return null
  return (
    <section className="giving-part">
      <h2>{say('administration.rules')}</h2>
      <ul className="giving-if">
        {told.map((words) => (
          <li key={words}>{words}</li>
        ))}
        {wouldDiffer.length === 0 ? null : (
          <li>
            {say('administration.would_differ', {
              count: wouldDiffer.length,
              rules: wouldDiffer.map(({ rule }) => rule.replaceAll('_', ' ')).join(', '),
            })}
          </li>
        )}
      </ul>
    </section>
  )
}
