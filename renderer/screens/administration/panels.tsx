import { useState } from 'react'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { AdministrationView, SheetCell, StepView } from '../../../protocols/runner/view.ts'
import { useReading } from '../../app/host.tsx'
import { go } from '../../app/route.ts'
import type { Command } from '../../input/keys.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Notice } from '../../parts/notice.tsx'
import type { FaceProps } from '../../steps/face.ts'
import { faceOf } from '../../steps/registry.ts'
import { tellPass } from '../../steps/place-words.ts'
import { say } from '../../words/index.ts'
import { ChooseOrder } from './choose-order.tsx'
import { CommandList, type CommandsProps } from './commands.tsx'
import { ExplainForm } from './explain-form.tsx'
import {
  AccommodationForm,
  CloseForm,
  type Closable,
  DeviationForm,
  type FormProps,
  PauseForm,
  RemarkForm,
  SkipForm,
} from './forms.tsx'
import { CloseCells } from './sheet/close-cells.tsx'
import { PutRight } from './put-right/put-right.tsx'

interface Props extends CommandsProps {
  /** `gaps`: what is open on the page is asked for, before it is left. */
  readonly panel: Command | 'gaps' | null
  readonly onPanel: (panel: Command | null) => void
  /** The cell of a page that was typed in last. */
  readonly cell: SheetCell | null
  readonly onAct: (body: EventBody) => Promise<string | null>
  readonly send: FaceProps['send']
  /** Void trials whose reason was put off. */
  readonly later: readonly string[]
  readonly onLater: (trial: string) => void
}

/** What may be closed here: the trial at hand, and each pass around it, innermost first. */
function closable(step: StepView): readonly Closable[] {
  const passes = step.passes.toReversed().map((pass) => ({
    what: pass.loop,
    label: tellPass(pass) ?? pass.loop,
  }))
  return faceOf(step).isTrial
    ? [{ what: step.name, label: say('administration.close.trial') }, ...passes]
    : passes
}

function Accommodation({ view, ...props }: FormProps & { readonly view: AdministrationView }) {
  const { id, from } = view.protocol
  const { value } = useReading('protocols.read', { key: id, from })
  return <AccommodationForm {...props} allowed={value?.accommodations ?? []} />
}

interface RightProps extends FormProps {
  readonly view: AdministrationView
  readonly first: 'value' | null
}

function Right({ view, first, onAct, onClose }: RightProps) {
  const [problem, setProblem] = useState<string | null>(null)
  const { client } = view
  return (
    <PutRight
      first={first}
      trials={view.trials}
      examiner={view.examiner}
      on={view.on}
      onAct={async (body) => {
        const refused = await onAct(body)
        setProblem(refused)
        return refused === null
      }}
      onMove={client === null ? null : () => go(`move/${client}/${view.id}`)}
      problem={problem === null ? null : <Notice tone="caution" title={problem} isLive />}
      onClose={onClose}
    />
  )
}

/** A rule that asks before it acts: what it would do, and the two answers. */
function Asking({ view, onAct }: Pick<Props, 'view' | 'onAct'>) {
  const [problem, setProblem] = useState<string | null>(null)
  const { asking } = view
  if (asking === null) return null
  const answer = (apply: boolean) => async () =>
    setProblem(await onAct({ kind: 'ruled', rule: asking.rule, place: asking.place, apply }))
  return (
    <Dialog
      title={say('administration.rule.title')}
      isOpen
      mustAnswer
      onClose={() => {}}
      actions={
        <>
          <Button look="strong" isLarge onPress={() => void answer(true)()}>
            {say('administration.rule.yes')}
          </Button>
          <Button isLarge onPress={() => void answer(false)()}>
            {say('administration.rule.no')}
          </Button>
        </>
      }
    >
      <p className="giving-text">{asking.text}</p>
      <p role="alert" className="giving-problem">
        {problem}
      </p>
    </Dialog>
  )
}

/** The form of a command, over the stage. */
function Form({ view, panel, cell, onPanel, onAct, onCommand, taken, send }: Props) {
  const { sheet, step } = view
  const form = { onAct, onClose: () => onPanel(null) }
  if (sheet !== null && (panel === 'close' || panel === 'gaps')) {
    return <CloseCells {...form} sheet={sheet} cell={panel === 'close' ? cell : null} />
  }
  switch (panel) {
    case 'help':
      return (
        <Dialog
          title={say('administration.keys')}
          isOpen
          onClose={form.onClose}
          actions={
            <>
              <Button onPress={form.onClose}>{say('administration.shut')}</Button>
              <Button
                look="quiet"
                onPress={() => go(view.client === null ? 'rehearsal' : `client/${view.client}`)}
              >
                {say('administration.leave')}
              </Button>
            </>
          }
        >
          <CommandList
            view={view}
            taken={taken}
            onCommand={(command) => {
              onPanel(null)
              onCommand(command)
            }}
          />
        </Dialog>
      )
    case 'pause':
      return <PauseForm {...form} />
    case 'deviation':
      return <DeviationForm {...form} />
    case 'accommodation':
      return <Accommodation {...form} view={view} />
    case 'remark':
      return <RemarkForm {...form} />
    case 'correct':
    case 'put_right':
      return <Right {...form} view={view} first={panel === 'correct' ? 'value' : null} />
    default:
      return step === null ? null : <StepForm {...form} step={step} panel={panel} send={send} />
  }
}

interface StepFormProps extends FormProps {
  readonly step: StepView
  readonly panel: Props['panel']
  readonly send: FaceProps['send']
}

function StepForm({ step, panel, send, onAct, onClose }: StepFormProps) {
  if (panel === 'close')
    return <CloseForm onAct={onAct} onClose={onClose} closable={closable(step)} place={step.place} />
  if (panel === 'skip')
    return <SkipForm onAct={onAct} onClose={onClose} step={step.name} place={step.place} />
  const { Typed } = faceOf(step)
  return panel === 'typed' && Typed !== null ? <Typed step={step} onClose={onClose} send={send} /> : null
}

/** Asks for the reason of a void trial once nothing runs any more; it may wait until the end, not longer. */
function Explaining({ view, onAct, later, onLater }: Pick<Props, 'view' | 'onAct' | 'later' | 'onLater'>) {
  const [trial] = view.unexplained.filter((each) => !later.includes(each))
  if (trial === undefined || view.phase !== 'giving') return null
  if (view.step !== null && faceOf(view.step).isRunning(view.step)) return null
  return (
    <ExplainForm
      key={trial}
      trial={trial}
      reasons={view.voidReasons}
      onAct={onAct}
      onClose={() => onLater(trial)}
    />
  )
}

/** Everything that opens over the stage. */
export function Panels(props: Props) {
  const { choosing } = props.view
  return (
    <>
      <Form {...props} />
      {props.panel === null ? <Explaining {...props} /> : null}
      <Asking view={props.view} onAct={props.onAct} />
      {choosing === null || props.panel !== null ? null : (
        <ChooseOrder key={JSON.stringify(choosing)} choosing={choosing} onAct={props.onAct} />
      )}
    </>
  )
}
