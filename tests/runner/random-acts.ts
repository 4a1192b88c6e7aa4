/** Acts that an examiner, a clock or a careless screen might send, drawn from where an administration stands. */
import type { EventBody, Place } from '../../protocols/runner/events.ts'
import { Giving, madeProtocol, uuid } from './giving.ts'

/** Everything the runner knows in one small protocol. */
export const EVERYTHING = madeProtocol(
  `
  - { kit: laid_out, of: [board, pegs] }
  - for-each: hand
    in: hands
    order: [dominant-first, shuffled]
    steps:
      - { position: seated }
      - { timed: try_out, practice: true, start: { said: go }, stop: { seen: Done. } }
      - for-each: part
        in: parts
        order: chosen
        steps:
          - repeat: attempt
            times: { least: 1, most: 3 }
            until: "count(given(run.time)) >= 2 && spread(last(run.time, 2)) < 2"
            steps:
              - { rest: breath, since: run, least: 20 s }
              - { timed: run, voids: 1, start: { said: go }, stop: { seen: Done. }, limit: 30 s, counts-as: { limit: over 30 s, unable: 60 s } }
              - { measured: grade, of: run, unit: "{score}", range: [0, 3] }
              - { rule: quick, when: "last(run.time) < 6", note: Quick. }
          - { rule: floor, when: "max(grade.value) == 0", end: part, credit: { grade: 0, run: 30 }, confirm: Sure? }
      - { counted: moved, window: 10 s, start: { said: go }, range: [0, 50] }
  - { measured: last_one, unit: kgf, range: [0, 100] }
`,
  `
lists: { parts: [{ id: near }, { id: far }] }
happenings:
  helped: { seen: The other hand helps., then: void }
  fell: { seen: A ring falls., then: tally, adds: 5 s }
  pain: { seen: Pain., then: stop }
accommodations: { seat: Another seat }
`,
)

const OUTCOMES = ['unable', 'refused', 'not_allowed', 'absent', 'not_given'] as const
const ENDS = ['nothing', 'trial', 'hand', 'test', 'visit'] as const
const CAUSES = ['restart', 'focus_lost', 'suspended', 'clock_changed'] as const
const CHOICES = ['go_on', 'practice_again', 'close'] as const
const STEP_EVENTS = [
  'kit.checked',
  'position.set',
  'timed.armed',
  'timed.started',
  'timed.stopped',
  'timed.kept',
  'timed.typed',
  'timed.limit_reached',
  'counted.armed',
  'counted.started',
  'counted.tapped',
  'counted.window_ended',
  'counted.entered',
  'counted.kept',
  'measured.entered',
  'measured.kept',
  'rest.began',
  'rest.over',
  'rest.cut',
]
const OWN = [
  'undone',
  'paused',
  'resumed',
  'halted',
  'settled',
  'interrupted',
  'confirmed',
  'reopened',
  'closed',
  'skipped',
  'voided',
  'happened',
  'explained',
  'corrected',
  'relabelled',
  'taken_up',
  'reattributed',
  'assigned',
  'deviated',
  'accommodated',
  'remarked',
  'noted',
  'ordered',
  'ruled',
  'clock',
  'finished',
]

/** Draws numbers from one, so that a shrunk number is a shrunk act. */
function drawing(seed: number): (below: number) => number {
  let left = seed
  return (below) => {
    left = (Math.imul(left, 1_103_515_245) + 12_345) >>> 1
    return left % below
  }
}

/** An act for where the administration stands: mostly one that is offered, now and then any other. */
export function drawAct(giving: Giving, seed: number): EventBody {
  const draw = drawing(seed)
  const view = giving.view()
  const main = view.offers.find((offer) => offer.main && offer.open)?.event
  const at = draw(10)
  const offered = view.offers.map(({ event }) => event).filter((event) => event !== 'withdrawn')
  const event =
    at < 5 && main !== undefined
      ? main
      : at < 8
        ? (forward(giving) ?? pick(draw, offered))
        : at === 8
          ? pick(draw, offered)
          : pick(draw, [...STEP_EVENTS, ...OWN])
  giving.now += draw(4) === 0 ? draw(900) : 1000 + draw(28_000)
  giving.wall += draw(12) === 0 ? 2000 : 2
  return bodyOf(giving, event, draw)
}

/** What goes on where no key does: the clock outside, a value to type, a choice. */
function forward(giving: Giving): string | null {
  const { step, choosing, asking, phase } = giving.view()
  if (choosing !== null) return 'ordered'
  if (asking !== null) return 'ruled'
  if (phase === 'halted') return 'settled'
  if (phase === 'stale') return 'reopened'
  const next: Record<string, string> = {
    'rest waiting': 'rest.began',
    'rest resting': 'rest.over',
    'counted running': 'counted.window_ended',
    'counted ended': 'counted.entered',
    'measured waiting': 'measured.entered',
  }
  return step === null ? null : (next[`${step.kind} ${step.state}`] ?? null)
}

const pick = <Item>(draw: (below: number) => number, from: readonly Item[]): Item => {
  const item = from[draw(from.length)]
  if (item === undefined) throw new Error('There is nothing to draw from.')
  return item
}

function bodyOf(giving: Giving, event: string, draw: (below: number) => number): EventBody {
  const view = giving.view()
  const wrong = draw(12) === 0
  const place: Place = wrong
    ? { hand: 'left' }
    : (view.step?.place ?? view.asking?.place ?? view.choosing?.place ?? {})
  if (draw(15) === 0) giving.input = giving.input === 'key' ? 'pedal' : 'key'
  if (draw(25) === 0) giving.clock = `page-${draw(3)}`
  const stamp = { at: giving.now, clock: giving.clock, input: giving.input, late: 1 }
  const step = wrong && draw(2) === 0 ? 'last_one' : (view.step?.name ?? 'run')
  const trial = view.unexplained[0] ?? view.trials.at(-1)?.id ?? uuid(70_000)
  const data: Record<string, Record<string, unknown>> = {
    'kit.checked': { ticked: ['board', 'pegs'], problems: [], stamp: null },
    'timed.typed': { seconds: draw(40), confirmed: draw(2) === 0 },
    'timed.limit_reached': { at: giving.now, clock: giving.clock },
    'counted.window_ended': { at: giving.now + 10_000, clock: giving.clock },
    'counted.entered': { count: draw(60), confirmed: draw(2) === 0 },
    'measured.entered': { value: draw(4), confirmed: draw(2) === 0 },
    'rest.began': { at: giving.now, clock: giving.clock },
    'rest.over': { at: giving.now + 20_000, clock: giving.clock },
    'rest.cut': { reason: 'No time' },
    skipped: { reason: 'No time' },
    happened: { happening: pick(draw, ['helped', 'fell', 'pain', 'not_ready', 'flew']), stamp },
  }
  if (event.includes('.') || ['voided', 'skipped', 'happened'].includes(event)) {
    return { kind: event, step, place, ...(data[event] ?? { stamp }) } as EventBody
  }
  return ownBody(giving, event, draw, place, trial)
}

function ownBody(
  giving: Giving,
  event: string,
  draw: (below: number) => number,
  place: Place,
  trial: string,
): EventBody {
  const view = giving.view()
  const reason = 'So it was'
  const bodies: Record<string, object> = {
    paused: { reason },
    halted: { stamp: null },
    settled: { ends: pick(draw, ENDS), reason, pain: draw(11), done: '' },
    interrupted: { cause: pick(draw, CAUSES) },
    confirmed: { what: draw(8) === 0 ? 'start' : 'resume' },
    reopened: { afterSeconds: 2000, choice: pick(draw, CHOICES) },
    closed: {
      what: pick(draw, ['trial', 'hand', 'part', 'attempt', 'test']),
      place,
      outcome: pick(draw, OUTCOMES),
      reason,
    },
    explained: { trial, happening: pick(draw, ['not_ready', 'fell']), remark: '' },
    corrected: {
      trial,
      column: pick(draw, ['time', 'value', 'count']),
      value: draw(30),
      confirmed: draw(2) === 0,
      reason,
    },
    relabelled: { reason },
    taken_up: view.missing[0] ?? { rule: pick(draw, ['floor', 'attempt', 'quick']), place },
    reattributed: { examiner: { id: uuid(950), name: 'Olu' }, on: null, reason },
    assigned: { client: uuid(902), facts: view.facts, reason },
    deviated: { what: 'Noise', reason, norms: 'caution' },
    accommodated: { accommodation: draw(2) === 0 ? 'seat' : null, what: 'Seat', reason },
    remarked: { text: 'Cheerful' },
    noted: { text: 'Noted' },
    ordered: {
      section: view.choosing?.section ?? 'part',
      place: view.choosing?.place ?? place,
      items: draw(2) === 0 ? ['near', 'far'] : ['far', 'near'],
      rule: 'chosen',
    },
    ruled: { rule: view.asking?.rule ?? 'floor', place, apply: draw(2) === 0 },
    signalled: {
      step: view.step?.name ?? 'carry',
      place,
      signal: 'ready',
      by: 'sight',
      at: giving.now,
      clock: giving.clock,
    },
    clock: { clock: giving.clock, resolutionMs: 0.1, isolated: false },
    withdrawn: { reason },
  }
  return { kind: event, ...bodies[event] } as EventBody
}
