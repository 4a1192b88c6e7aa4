import { useEffect, useState } from 'react'
import type { Input } from '../../../main/contract/procedures.ts'
import type { EventBody } from '../../../protocols/runner/events.ts'
import type { AdministrationView, SheetCell } from '../../../protocols/runner/view.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useSettings } from '../../app/session.tsx'
import { CLOCK } from '../../input/clock.ts'
import { COMMAND_KEYS, type Command } from '../../input/keys.ts'
import { capOf } from '../../input/keys-shown.ts'
import { useInput } from '../../input/use-input.ts'
import { Cover } from '../../parts/cover.tsx'
import { Waiting } from '../../parts/waiting.tsx'
import type { FaceProps } from '../../steps/face.ts'
import { faceOf } from '../../steps/registry.ts'
import { tellRefusal } from '../../steps/refusal.tsx'
import { say } from '../../words/index.ts'
import type { Desk, DeskState } from './desk.ts'
import { Giving, type GivingProps } from './giving.tsx'
import { stepBody } from './intents.ts'
import { Panels } from './panels.tsx'
import { useClockTold, useClockWatch, useDue, useOrphans } from './use-clock.ts'
import { useDesk } from './use-desk.ts'
import { useDead, usePresses } from './use-press.ts'
import { useSignals } from './use-signals.ts'
import { Halted, Stale } from './waits.tsx'
import './administration.css'

export interface AdministrationScreenProps {
  readonly store: Input<'administrations.act'>['store']
  readonly administration: string
  /** Called when nothing is left to do here: finished, withdrawn, or to be confirmed first. */
  readonly onLeave: () => void
}

const HERE: readonly AdministrationView['phase'][] = ['giving', 'paused', 'halted', 'stale', 'rating']

interface StandingProps {
  readonly desk: Desk
  readonly view: AdministrationView
  readonly state: DeskState
  /** Looks whether the clocks can be trusted; see `useClockWatch`. */
  readonly look: () => boolean
}

/** Hides everything of the test; whatever runs under it runs on, and its keys work as before. */
function Covered({ view, onLift }: { readonly view: AdministrationView; readonly onLift: () => void }) {
  const running = view.step !== null && faceOf(view.step).isRunning(view.step)
  return (
    <Cover
      title={say('administration.covered')}
      detail={say(running ? 'administration.covered_running' : 'administration.covered_detail')}
      liftLabel={say('administration.lift')}
      keyCode={capOf(COMMAND_KEYS.cover)}
      onLift={onLift}
    />
  )
}

/** Sends an event and gives back why it was not taken, in words; null once it was. */
function useActs(desk: Desk): (body: EventBody) => Promise<string | null> {
  return async (body) => {
    const { taken, refusal } = await desk.act(() => body, true)
    if (taken) return null
    return refusal === null ? say('administration.not_sent') : tellRefusal(refusal)
  }
}

/** Has given what a correction shows to be missing. */
const takesUp =
  (desk: Desk): GivingProps['onTakeUp'] =>
  (named) =>
    void desk.act(() => ({ kind: 'taken_up', ...named }), false)

/** Sends an event of the step at hand. */
const sender =
  (desk: Desk): FaceProps['send'] =>
  async (event, data) =>
    (await desk.act(({ step }) => (step === null ? null : stepBody(step, event, data)), true)).refusal

function Standing({ desk, view, state, look }: StandingProps) {
  const settings = useSettings()
  const [panel, setPanel] = useState<Command | 'gaps' | null>(null)
  const [isCovered, setCovered] = useState(false)
  const [later, setLater] = useState<readonly string[]>([])
  const onAct = useActs(desk)
  const [cell, setCell] = useState<SheetCell | null>(null)
  const presses = usePresses({
    desk,
    view,
    settings,
    look,
    cell,
    open: (asked) => (asked === 'cover' ? setCovered((before) => !before) : setPanel(asked)),
  })
  const [isStuck, setStuck] = useState(false)
  const pointer = useInput(settings, { ...presses, stuck: setStuck })
  const isDead = useDead(view)
  useDue(desk, view, look)
  const signal = useSignals(desk, view, settings.sound)
  if (view.phase === 'halted') return <Halted view={view} onAct={onAct} />
  if (view.phase === 'stale') return <Stale view={view} onAct={onAct} />
  const onCommand = (command: Command): void => presses.command(command, performance.now(), 'pointer')
  const shared = { view, onAct, onCommand, taken: Object.values(presses.keys), send: sender(desk) }
  return (
    <>
      <Giving
        {...shared}
        state={state}
        mainKey={settings.mainKey}
        showClock={settings.showClock}
        isDead={isDead}
        isStuck={isStuck}
        signal={signal}
        happeningKeys={presses.keys}
        onPointer={pointer}
        onMain={(at) => presses.main(at, 'key')}
        onHappening={(name) => presses.happening(name, performance.now(), 'pointer')}
        onExplain={() => setLater([])}
        onTakeUp={takesUp(desk)}
        prepare={presses.prepare}
        onCell={setCell}
      />
      <Panels
        {...shared}
        panel={panel}
        cell={cell}
        onPanel={setPanel}
        later={later}
        onLater={(trial) => setLater((before) => [...before, trial])}
      />
      {isCovered ? <Covered view={view} onLift={() => setCovered(false)} /> : null}
    </>
  )
}

/** Gives one test: step by step as its chart says, with a key for everything. */
export default function AdministrationScreen({ store, administration, onLeave }: AdministrationScreenProps) {
  const { desk, state } = useDesk(store, administration)
  const { view } = state
  const isElsewhere = view !== null && !HERE.includes(view.phase)
  useOrphans(desk, view)
  useClockTold(desk, view?.phase)
  const look = useClockWatch(desk)
  useEffect(() => {
    if (isElsewhere) onLeave()
  }, [isElsewhere, onLeave])
  const fault = state.fault === null || state.fault.code === 'host_gone' ? null : state.fault
  if (view === null || isElsewhere)
    return fault === null ? <Waiting /> : <FaultNotice fault={fault} onAgain={() => void desk.read()} />
  return (
    <div className="giving" data-clock={CLOCK}>
      <FaultNotice fault={fault} onAgain={() => void desk.read()} />
      <Standing desk={desk} view={view} state={state} look={look} />
    </div>
  )
}
