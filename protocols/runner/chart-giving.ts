/** The phase in which the protocol is given: its steps, its end, and what ends or holds it up from any step. */
import type { Node } from '../language/model.ts'
import { isSheet } from '../language/sheet.ts'
import { told, unexplained } from './afterwards.ts'
import { endedByKey, happeningOf } from './befalls.ts'
import { onceNode } from './chart-once.ts'
import { ruleNode } from './chart-rules.ts'
import { cutOff, sectionNode } from './chart-sections.ts'
import { sheetNode } from './chart-sheet.ts'
import { causeOf, INTERRUPTED, stepNode } from './chart-steps.ts'
import { BACK, CLOSE, phase, SETTLE_TEST } from './chart-waiting.ts'
import { type Ground, sectionKind } from './due.ts'
import { grow } from './grown.ts'
import { misplaced } from './step-ground.ts'
import type { Happened, State } from './state.ts'
import { both, type Change, type ChartNode, entering, type Transition, transition } from './transitions.ts'
import { END } from './tree.ts'
import { refuse } from './refuse.ts'
import { takingUp } from './taking-up.ts'

export function givingNode(ground: Ground): ChartNode {
  const [first] = ground.protocol.steps
  const whole = { section: null, laterPasses: true }
  const ends = (outcome: 'stopped' | 'not_given'): Transition =>
    transition(END, { automatic: true }, cutOff(ground, whole, outcome))
  return {
    initial: first?.name ?? END,
    states: {
      ...nodesOf(ground, ground.protocol.steps),
      [END]: endNode(ground),
      [BACK]: { id: BACK, type: 'history', history: 'deep' },
    },
    on: {
      halted: [transition(phase('halted'), {}, stopped)],
      happened: [
        transition(
          phase('halted'),
          {
            when: (_state, event) => happeningOf(ground, event)?.becomes === 'stop',
            refuses: misplaced,
          },
          both(stopped, (state, { body }) =>
            state.flight !== null && 'happening' in body
              ? {
                  flight: {
                    ...state.flight,
                    happenings: [...state.flight.happenings, String(body.happening)],
                  },
                }
              : {},
          ),
        ),
      ],
      paused: [
        told(
          'paused',
          {
            waits: ({ running }) => running,
            refuses: ({ running }) => (running ? refuse('trial_running') : null),
            change: ({ pauses }, { reason }, { at, user }) => ({
              because: reason,
              pauses: grow(pauses, { reason, from: at, to: null, by: user }),
            }),
          },
          phase('paused'),
        ),
      ],
      interrupted: interruptions(),
      [INTERRUPTED]: interruptions(),
      closed: [closesTest(ground)],
      [SETTLE_TEST]: [ends('stopped')],
      [CLOSE]: [ends('not_given')],
    },
  }
}

function nodesOf(ground: Ground, nodes: readonly Node[]): Record<string, ChartNode> {
  return Object.fromEntries(
    nodes.map((node) => {
      if (node.node === 'section') {
        if (isSheet(node)) return [node.name, sheetNode(ground, node)]
        const made = sectionKind(node).chart === null ? onceNode : sectionNode
        return [node.name, made(ground, node, nodesOf(ground, node.steps))]
      }
      return [node.name, node.node === 'step' ? stepNode(ground, node) : ruleNode(ground, node)]
    }),
  )
}

/** All is given, or ended: what is left is to say so, once every void trial has its reason. */
function endNode(ground: Ground): ChartNode {
  return {
    id: END,
    initial: entering('waiting', () => ({
      at: END,
      visit: null,
      place: {},
      flight: null,
      running: false,
      returning: null,
      detour: null,
    })),
    states: {
      waiting: {
        on: {
          finished: [
            told(
              'finished',
              {
                main: true,
                waits: (state) => unexplained(state).length > 0,
                refuses: (state) => {
                  const [open] = unexplained(state)
                  return open === undefined ? null : refuse('void_unexplained', { trial: open.id })
                },
                change: (_state, _body, { at }) => ({ finishedAt: at }),
              },
              phase('finished'),
            ),
          ],
          taken_up: takingUp(ground),
        },
      },
    },
  }
}

/** The clock of a running trial ends at once; what becomes of it is settled later. */
const stopped: Change = both(
  (state, { body }) => {
    const { flight, running } = state
    if (flight === null || !running || !('stamp' in body) || body.stamp === null) return {}
    const { at } = body.stamp as { readonly at: number }
    return { flight: { ...flight, stamps: [...flight.stamps, at] } }
  },
  both(endedByKey, (_state, { body }) => ({
    because: 'happening' in body ? String(body.happening) : null,
  })),
)

const passing = (event: Happened) => causeOf(event) === 'focus_lost'

/** A glance elsewhere goes on; after a restart, a sleep or a jump of the clock all is confirmed again. */
function interruptions(): Transition[] {
  return [
    transition(null, { automatic: true, when: (_state, event) => passing(event) }, () => ({})),
    transition(
      phase('confirming'),
      { automatic: true, when: (_state, event) => !passing(event) },
      (state, event) => ({ because: causeOf(event), gap: state.gap || event.late }),
    ),
  ]
}

/** Everything that is left is closed with one outcome. */
function closesTest(ground: Ground): Transition {
  const change = (state: State, event: Happened) => {
    const { body } = event
    const outcome = 'outcome' in body ? body.outcome : 'not_given'
    return cutOff(ground, { section: null, laterPasses: true }, outcome as 'not_given')(state, event)
  }
  return transition(END, { when: (_state, { body }) => 'what' in body && body.what === 'test' }, change)
}
