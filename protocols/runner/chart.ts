/**
 * The chart of a protocol: preparing and confirming, then one state a step of the file, with the ways of being
 * held up beside it. It is built as data from the checked protocol and holds no timers.
 */
import { type AnyStateMachine, createMachine, type MachineConfig } from 'xstate'
import { afterwards, told } from './afterwards.ts'
import { givingNode } from './chart-giving.ts'
import { beginsRating, ratingNode } from './chart-rating.ts'
import type { Ground } from './due.ts'
import { BACK, heldUp, pauseOver, phase } from './chart-waiting.ts'
import { notPrepared, notToBeGiven } from './preparing.ts'
import { BEGINNING, type Happened, type State } from './state.ts'
import type { ChartNode, Transition } from './transitions.ts'
import { breakOff } from './trials.ts'
import type { Refusal } from './view.ts'
import { refuse } from './refuse.ts'

/** The chart; its context is a `State`, its events are `Happened`. */
export function chartOf(ground: Ground): AnyStateMachine {
  const always = afterwards(ground)
  const withdrawn = [withdrawing(ground)]
  const states: Record<string, ChartNode> = {
    confirming: confirming(ground),
    giving: givingNode(ground),
    ...heldUp(ground),
    finished: { on: { rating_begun: [beginsRating(ground)] } },
    rating: ratingNode(ground),
  }
  const phases = Object.entries(states).map(([name, node]): [string, ChartNode] => [
    name,
    { ...node, id: phase(name), on: { ...always, withdrawn, ...node.on } },
  ])
  const config: ChartNode & { readonly context: State } = {
    id: '=',
    initial: 'unopened',
    context: BEGINNING,
    states: {
      unopened: { on: { opened: [opening()] } },
      preparing: { id: phase('preparing'), on: { ...always, withdrawn, prepared: [preparing(ground)] } },
      ...Object.fromEntries(phases),
      withdrawn: { id: phase('withdrawn'), on: always },
    },
  }
  return createMachine(config as unknown as MachineConfig<State, Happened>)
}

const opening = (): Transition =>
  told(
    'opened',
    {
      change: (_state, opened, { at }) => ({
        opened,
        openedAt: at,
        examiner: opened.examiner.name,
        on: opened.on,
      }),
    },
    phase('preparing'),
  )

const preparing = (ground: Ground): Transition =>
  told(
    'prepared',
    {
      refuses: ({ facts }, answers) =>
        facts === null ? refuse('not_assigned') : notPrepared(ground.protocol, answers),
      change: (_state, prepared) => ({ prepared }),
    },
    phase('confirming'),
  )

const wrong = (due: 'start' | 'resume'): Refusal => refuse('wrong_confirmation', { due })

const resume = (late: boolean): Transition =>
  told(
    'confirmed',
    {
      main: true,
      when: ({ begun, gap }, _body, event) => begun && (gap || event.late) === late,
      refuses: (_state, { what }) => (what === 'resume' ? null : wrong('resume')),
      change: () => (late ? { gap: true } : { because: null }),
    },
    late ? phase('stale') : BACK,
  )

/** Client, hand and examiner are confirmed by one key: before the first step, and again after a restart. */
function confirming(ground: Ground): ChartNode {
  const start = told(
    'confirmed',
    {
      main: true,
      when: ({ begun }) => !begun,
      refuses: (state, { what }) => (what === 'start' ? notToBeGiven(state) : wrong('start')),
      change: () => ({ begun: true, because: null }),
    },
    phase('giving'),
  )
  return {
    on: {
      confirmed: [start, resume(true), resume(false)],
      prepared: [
        told('prepared', {
          refuses: (state, answers) =>
            state.begun ? refuse('not_now') : notPrepared(ground.protocol, answers),
          change: (_state, prepared) => ({ prepared }),
        }),
      ],
    },
  }
}

/** The wrong test: what was given stays, unscored. */
const withdrawing = (ground: Ground): Transition =>
  told(
    'withdrawn',
    {
      change: (state, { reason }, event) => ({
        ...(state.flight !== null &&
          breakOff(ground, state, event, {
            happening: null,
            cause: 'withdrawn',
            valueSeen: false,
            counts: false,
          })),
        ...pauseOver(state, event),
        because: reason,
      }),
    },
    phase('withdrawn'),
  )
