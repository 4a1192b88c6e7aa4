import { useEffect, useState } from 'react'
import type { AdministrationView, SheetView, StepView } from '../../../protocols/runner/view.ts'
import { go } from '../../app/route.ts'
import type { Signal } from '../../input/sound.ts'
import { Button } from '../../parts/button.tsx'
import { MainAction } from '../../parts/main-action.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Stage } from '../../parts/stage.tsx'
import type { EventData, FaceProps } from '../../steps/face.ts'
import { RefusalNotice } from '../../steps/refusal.tsx'
import { faceOf } from '../../steps/registry.ts'
import { hasWords, say } from '../../words/index.ts'
import { CommandBar } from './commands.tsx'
import type { CommandsProps } from './commands.tsx'
import type { DeskState } from './desk.ts'
import { Figure } from './figure.tsx'
import { Head } from './head.tsx'
import { mainOffer, ownEvent } from './intents.ts'
import { Counted, Events, LevelsSoFar, MaySay, RulesSoFar, TrialsSoFar } from './side.tsx'
import { Missing, type MissingProps } from './missing.tsx'
import { openIn } from './sheet/grid.ts'
import { Sheet, type SheetProps } from './sheet/sheet.tsx'
import { tellBecause } from './waits.tsx'

export interface GivingProps extends CommandsProps {
  readonly state: DeskState
  readonly mainKey: string
  readonly showClock: boolean
  readonly isDead: boolean
  /** The main key has been down for long: it lies under something, or its release was never told. */
  readonly isStuck: boolean
  /** The signal that is given at this moment; null: none. */
  readonly signal: Signal | null
  readonly happeningKeys: Readonly<Record<string, string | null>>
  readonly onPointer: (event: PointerEvent) => void
  readonly onMain: (at: number) => void
  readonly onHappening: (name: string) => void
  /** Asks again for the reasons of void trials that were put off. */
  readonly onExplain: () => void
  /** Has given what a correction shows to be missing. */
  readonly onTakeUp: MissingProps['onTakeUp']
  readonly send: FaceProps['send']
  readonly prepare: (data: EventData | null) => void
  readonly onAct: SheetProps['onAct']
  readonly onCell: SheetProps['onCell']
}

/** What the next press does, in words; the same place and the same key whatever it is. */
function mainWords(view: AdministrationView): { readonly label: string; readonly isWaiting: boolean } {
  const event = mainOffer(view)
  const gaps = view.sheet === null ? 0 : openIn(view.sheet).length
  if (gaps > 0 && view.phase === 'giving') {
    return { label: say('sheet.gaps', { count: gaps }), isWaiting: false }
  }
  if (view.step === null || (event !== null && ownEvent(view.step, event) === null)) {
    const waits = view.unexplained.length > 0 ? 'needs_reason' : 'waits'
    const key = `administration.main.${event ?? waits}`
    return { label: say(hasWords(key) ? key : 'administration.main.waits'), isWaiting: event === null }
  }
  const words = faceOf(view.step).main(view.step, ownEvent(view.step, event))
  return { label: say(words.key, words.values), isWaiting: event === null || words.isWaiting === true }
}

function Main({ view, mainKey, isDead, state, onPointer, onMain }: GivingProps) {
  const { label, isWaiting } = mainWords(view)
  return (
    <MainAction
      label={label}
      keyCode={mainKey}
      isWaiting={isDead || isWaiting || state.view === null}
      onPointerDown={(event) => {
        event.preventDefault()
        onPointer(event.nativeEvent)
      }}
      onClick={(event) => {
        // Pressed by Enter or by an assistive program: there was no pointer to go down.
        if (event.detail === 0) onMain(event.timeStamp)
      }}
    />
  )
}

function Text({ step, look }: { readonly step: StepView; readonly look: string }) {
  return step.text === null ? null : <p className={look}>{step.text}</p>
}

/** Says that the trial before this one was broken off, and by what: nobody has to guess why it is void. */
function BrokenOff({ view }: { readonly view: AdministrationView }) {
  const last = view.trials.at(-1)
  if (last === undefined || last.step !== view.step?.name || last.void === null) return null
  const key = `administration.because.${last.void.cause}`
  return hasWords(key) ? <Notice tone="caution" title={say(key)} isLive /> : null
}

function StepBody({ step, ...props }: GivingProps & { readonly step: StepView }) {
  const { Face, isTrial } = faceOf(step)
  // Once a trial is under way, what to look for comes first and the long words stand back.
  const isUnderWay = isTrial && step.state !== 'waiting'
  return (
    <div className="giving-columns">
      <div className="giving-step">
        <h2 className="giving-kind">{say(`steps.${step.kind}.heading`)}</h2>
        <RefusalNotice refusal={props.state.refusal} />
        <BrokenOff view={props.view} />
        {props.isStuck ? <Notice tone="caution" title={say('administration.stuck')} isLive /> : null}
        {isUnderWay ? null : <Text step={step} look={isTrial ? 'giving-text giving-trial' : 'giving-text'} />}
        <Face step={step} showClock={props.showClock} send={props.send} prepare={props.prepare} />
        {isUnderWay ? <Text step={step} look="giving-text giving-trial soft" /> : null}
        {isTrial ? null : <TrialsSoFar view={props.view} />}
        <RulesSoFar view={props.view} />
      </div>
      <div className="giving-side">
        <Figure figure={step.figure} />
        <MaySay step={step} />
        <LevelsSoFar step={step} />
        {isTrial ? (
          <Counted view={props.view} step={step} keys={props.happeningKeys} onHappening={props.onHappening} />
        ) : null}
        {isTrial ? <TrialsSoFar view={props.view} /> : null}
      </div>
      {isTrial ? <Events step={step} /> : null}
    </div>
  )
}

/** Nothing is left to give: it ends with one more key, once every void trial has its reason. */
function AllGiven(props: GivingProps) {
  const { view } = props
  return (
    <div className="giving-columns">
      <div className="giving-step">
        <p className="giving-text">
          {say(view.phase === 'rating' ? 'administration.all_rated' : 'administration.all_given')}
        </p>
        <Missing missing={view.phase === 'rating' ? [] : view.missing} onTakeUp={props.onTakeUp} />
        {view.unexplained.length === 0 ? null : (
          <div className="stack">
            <p className="step-aside">
              {say('administration.unexplained', { count: view.unexplained.length })}
            </p>
            <div>
              <Button isLarge onPress={props.onExplain}>
                {say('administration.give_reason')}
              </Button>
            </div>
          </div>
        )}
        <RefusalNotice refusal={props.state.refusal} />
        <TrialsSoFar view={view} />
        <RulesSoFar view={view} />
      </div>
    </div>
  )
}

function SheetBody({ sheet, ...props }: GivingProps & { readonly sheet: SheetView }) {
  const { view, state, onAct, onCommand, onCell } = props
  return (
    <>
      <RefusalNotice refusal={state.refusal} />
      <Sheet view={view} sheet={sheet} onAct={onAct} onCommand={onCommand} onCell={onCell} />
      <RulesSoFar view={view} />
    </>
  )
}

function Paused(props: GivingProps) {
  return (
    <div className="giving-step">
      <p className="giving-text">{say('administration.is_paused')}</p>
      <p className="step-aside">{tellBecause(props.view.because)}</p>
      <RefusalNotice refusal={props.state.refusal} />
      <div>
        <Button isLarge onPress={() => go(props.view.client ? `client/${props.view.client}` : 'rehearsal')}>
          {say('app.leave_for_now')}
        </Button>
      </div>
    </div>
  )
}

/** What a tone says, for the eye: large, in the colours of the page turned round. What is read out says it elsewhere. */
function SignalShown({ signal }: { readonly signal: Signal }) {
  return (
    <p className="giving-signal" data-signal={signal} aria-hidden="true">
      {say(`administration.signal.${signal}`)}
    </p>
  )
}

/** What comes next is read from its beginning: keyed by where the test stands, it goes there once each time. */
function FromTheTop(): null {
  useEffect(() => {
    window.scrollTo(0, 0)
  }, [])
  return null
}

/** One step fills the screen: where we are, what to do and say, and the next thing to press. */
export function Giving(props: GivingProps) {
  const { view, state } = props
  const [announced, setAnnounced] = useState('')
  const standing = JSON.stringify([view.step?.name, view.step?.place, view.step?.state, view.sheet?.section])
  const running = view.step !== null && faceOf(view.step).isRunning(view.step)
  const now = [view.step?.text ?? '', mainWords(view).label].join(' ')
  // Nothing is read out while a clock runs for the client.
  if (!running && announced !== now) setAnnounced(now)
  return (
    <>
      {props.signal === null ? null : <SignalShown signal={props.signal} />}
      <Stage
        head={<Head view={view} saved={state.saved} waiting={state.waiting} />}
        main={<Main {...props} />}
        others={<CommandBar view={view} taken={props.taken} onCommand={props.onCommand} />}
      >
        {view.phase === 'paused' ? (
          <Paused {...props} />
        ) : view.choosing !== null || view.asking !== null ? null : view.sheet !== null ? (
          <SheetBody
            key={JSON.stringify([view.sheet.section, view.sheet.place])}
            {...props}
            sheet={view.sheet}
          />
        ) : view.step === null ? (
          <AllGiven {...props} />
        ) : (
          <StepBody key={JSON.stringify([view.step.name, view.step.place])} {...props} step={view.step} />
        )}
        <FromTheTop key={standing} />
        <output className="unseen">{announced}</output>
      </Stage>
    </>
  )
}
