import { NOTHING_KNOWN } from '../../../protocols/client.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useReading } from '../../app/host.tsx'
import { absentWords, affectedWords, ageWords, nameOf } from '../../app/person.ts'
import { useClinic, useSettings } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { MainAction } from '../../parts/main-action.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Stage } from '../../parts/stage.tsx'
import { useArrival } from '../../parts/use-arrival.ts'
import { useMainKey } from '../../parts/use-main-key.ts'
import { Waiting } from '../../parts/waiting.tsx'
import { tellSide } from '../../steps/tell.ts'
import { hasWords, say } from '../../words/index.ts'
import { noteConfirmed } from '../administration/confirmed-here.ts'
import type { View } from '../giving/index.tsx'
import type { StartingProps } from './preparing.tsx'
import { SoundCheck } from './sound-check.tsx'
import { useAct } from './use-act.ts'
import './confirming.css'
import { useRef } from 'react'

/** Right person, right hand, right examiner: read aloud at arm's length and confirmed by one key. */
export function ConfirmingScreen(props: StartingProps) {
  const { view } = props
  if (view.client === null) return <Confirming {...props} person={null} />
  return <ConfirmingClient {...props} client={view.client} />
}

function ConfirmingClient({ client, ...props }: StartingProps & { readonly client: string }) {
  const { value, fault, again } = useReading('clients.read', { id: client })
  if (!value)
    return (
      <main className="stage">{fault ? <FaultNotice fault={fault} onAgain={again} /> : <Waiting />}</main>
    )
  const { profile, age } = value.client
  const person = {
    name: nameOf(value.client),
    number: profile.name ? profile.number : '',
    second: profile.secondIdentifier,
    age: ageWords(age),
  }
  return <Confirming {...props} person={person} />
}

interface ConfirmingProps extends StartingProps {
  /** Null in a rehearsal. */
  readonly person: {
    readonly name: string
    readonly number: string
    readonly second: string
    readonly age: string
  } | null
}

function Confirming({ view, store, onChanged, onLeave, person }: ConfirmingProps) {
  const settings = useSettings()
  const { today } = useClinic()
  const heading = useRef<HTMLHeadingElement>(null)
  useArrival(heading)
  const { act, refused, fault, isBusy } = useAct(view, store)
  const isAgain = hasBegun(view)
  const confirm = async () => {
    if (isBusy || !(await act({ kind: 'confirmed', what: isAgain ? 'resume' : 'start' }))) return
    noteConfirmed(view.id)
    onChanged()
  }
  // It keeps the facts it was opened with: before anything was given it is left, to be begun anew with others.
  const leave = async () => {
    if (isAgain || (await act({ kind: 'withdrawn', reason: say('starting.confirm.wrong.reason') }))) onLeave()
  }
  useMainKey([settings.mainKey, settings.pedalKey], () => void confirm())
  return (
    <Stage
      head={<p className="confirming-test">{view.protocol.title}</p>}
      main={
        <MainAction
          label={say(isAgain ? 'starting.confirm.again' : 'starting.confirm')}
          keyCode={settings.mainKey}
          isWaiting={isBusy}
          onClick={() => void confirm()}
        />
      }
      others={
        <Button isLarge onPress={() => void leave()}>
          {say('starting.confirm.wrong')}
        </Button>
      }
    >
      <div className="stack">
        <h1 className="confirming-name" ref={heading} tabIndex={-1}>
          {person ? person.name : say('starting.confirm.nobody')}
        </h1>
        <dl className="confirming-facts">
          {factsOf(view, person).map(([id, text]) => (
            <div key={id}>
              <dt>{say(`starting.confirm.${id}`)}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        {isAgain && view.because ? <Notice tone="plain" title={becauseWords(view.because)} /> : null}
        {settings.sound ? <SoundCheck today={today} /> : null}
        <FaultNotice fault={fault} />
        {refused ? <Notice tone="fault" isLive title={refused} /> : null}
      </div>
    </Stage>
  )
}

/** True once anything was given: then it is gone on with and not begun. */
const hasBegun = (view: View) => view.trials.length > 0 || view.progress.passed > 0 || view.because !== null

function becauseWords(because: string): string {
  const key = `starting.because.${because}`
  return hasWords(key) ? say(key) : because
}

function factsOf(view: View, person: ConfirmingProps['person']): readonly (readonly [string, string])[] {
  const facts = view.facts ?? NOTHING_KNOWN
  const { firstHand } = view
  const ofPerson = person
    ? ([
        ['number', person.number],
        ['second', person.second || say('starting.confirm.second.none')],
        ['age', person.age],
        ['affected', affectedWords(facts)],
        ['absent', absentWords(facts)],
      ] as const)
    : []
  // Once it has begun, the hand that it goes on with is the one to look at.
  const now = hasBegun(view) && view.step ? tellSide(view.step.place) : ''
  const hand = [now ? ['now', now] : ['hand', firstHand ? handWords(firstHand) : '']] as const
  return [...ofPerson, ...hand, ['examiner', view.examiner] as const].flatMap(([id = '', text = '']) =>
    text === '' ? [] : [[id, text] as const],
  )
}

function handWords({ hand, rule }: NonNullable<View['firstHand']>): string {
  const key = `starting.order.${rule.replaceAll('-', '_')}`
  const side = say(hand === 'left' ? 'starting.hand.left' : 'starting.hand.right')
  return hasWords(key) ? say('starting.hand.by_rule', { side, rule: say(key) }) : side
}
