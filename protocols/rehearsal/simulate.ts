/** A made-up examiner and client: gives a whole administration through the runner, the same for the same seed. */
import type { ClientFacts } from '../client.ts'
import type { Protocol } from '../language/model.ts'
import type { EventBody, Recorded, Stamp } from '../runner/events.ts'
import type { AtHand, SheetAtHand, StepAtHand } from '../runner/at-hand.ts'
import { type Administration, type Runner, runnerFor } from '../runner/index.ts'
import { CLOCK, type Opened, type Prepared, preparedFor, STARTING } from './opening.ts'
import { randomFrom } from '../random.ts'

/** What is known of a trial that a made-up client is at, by itself or on a page. */
type AtTrial = Pick<StepAtHand, 'name' | 'kind' | 'place' | 'state'>

export interface Simulation {
  readonly seed: number
  readonly facts: ClientFacts
  readonly client: string | null
  readonly opened: Opened
  readonly user: string
  readonly kit: Prepared['kit']
  /** Conditions that aren't as they usually are. */
  readonly conditions: Readonly<Record<string, string>>
  /**
   * How the client does at a trial, from 0 up to 1, where chance alone isn't wanted: in place of the number drawn.
   * What high means is the kind's own: a long time, few counted, a strong grip.
   */
  readonly does?: (step: AtTrial, drawn: number) => number
  /** The next id; UUIDs, each once. */
  nextId(): string
  /** Wall time, RFC 3339, so many ms after the administration was opened. */
  at(ms: number): string
}

/** More events than any administration has: a protocol that doesn't end by itself is stopped here. */
const MOST_EVENTS = 50_000
/** How often a trial goes wrong. */
const VOIDED = 0.06

interface Session {
  readonly simulation: Simulation
  readonly runner: Runner
  readonly random: () => number
  readonly log: Recorded[]
  /** Names of what a trial may be void for. */
  readonly voidReasons: readonly string[]
  /** Trials of which is settled whether they go wrong. */
  readonly judged: Set<string>
  administration: Administration
  /** ms since it was opened, on the simulated clock too. */
  now: number
}

/**
 * Gives one administration from opening to the end.
 * @throws Error where the protocol refuses what its own kinds of steps propose: a defect of a kind
 */
export function simulate(protocol: Protocol, simulation: Simulation): Recorded[] {
  const runner = runnerFor(protocol)
  const random = randomFrom(simulation.seed)
  const session: Session = {
    simulation,
    runner,
    random,
    log: [],
    voidReasons: protocol.happenings.flatMap(({ name, becomes }) => (becomes === 'void' ? [name] : [])),
    judged: new Set(),
    administration: runner.begin(),
    now: 0,
  }
  open(session, protocol)
  while (session.log.length < MOST_EVENTS) {
    const here = runner.atHand(session.administration)
    if (here.phase !== 'giving') return session.log
    goOn(session, here)
  }
  return session.log
}

function act(session: Session, body: EventBody): void {
  const { simulation, runner, random, log } = session
  const recorded = { id: simulation.nextId(), at: simulation.at(session.now), user: simulation.user, body }
  const next = runner.take(session.administration, recorded)
  if ('refused' in next)
    throw new Error(`${body.kind} was refused as ${next.refused}: ${JSON.stringify(body)}`)
  session.administration = next
  log.push(recorded)
  const owed = runner.owed(next, { random, earlier: () => [] })
  if (owed !== null) act(session, owed)
}

function open(session: Session, protocol: Protocol): void {
  const { simulation } = session
  act(session, simulation.opened)
  act(session, { kind: 'assigned', client: simulation.client, facts: simulation.facts, reason: null })
  wait(session, 60_000)
  act(session, preparedFor(protocol, simulation.kit, simulation.conditions))
  wait(session, 5000)
  for (const body of STARTING) act(session, body)
}

const wait = (session: Session, ms: number): void => {
  session.now += ms
}

const stampNow = ({ now }: Session): Stamp => ({ at: now, clock: CLOCK, input: 'key', late: 0.5 })

function goOn(session: Session, here: AtHand): void {
  const { asking, sheet, step, unexplained } = here
  if (asking !== null) {
    wait(session, 3000)
    return act(session, { kind: 'ruled', rule: asking.rule, place: asking.place, apply: true })
  }
  const [unexplainedTrial] = unexplained
  const { voidReasons } = session
  const reason = voidReasons[Math.floor(session.random() * voidReasons.length)]
  if (unexplainedTrial !== undefined && reason !== undefined) {
    wait(session, 4000)
    return act(session, { kind: 'explained', trial: unexplainedTrial, happening: reason, remark: '' })
  }
  if (sheet !== null && here.choosing === null) return fillIn(session, sheet)
  if (step === null) {
    wait(session, 3000)
    return act(session, chosenOrder(here) ?? { kind: 'finished' })
  }
  if (goesWrong(session, here)) {
    wait(session, 2500)
    return act(session, { kind: 'voided', step: step.name, place: step.place, stamp: stampNow(session) })
  }
  perform(session, step)
}

/** Any open cell whose turn it is, until none is left. */
function fillIn(session: Session, { section, place, open: cells }: SheetAtHand): void {
  const blank = cells.filter(({ inTurn }) => inTurn)
  const cell = blank[Math.floor(session.random() * blank.length)]
  wait(session, 1500)
  if (cell === undefined) return act(session, { kind: 'sheet_left', section, place })
  const { does = (_, drawn) => drawn } = session.simulation
  const next = session.runner.rehearse(
    session.administration,
    () => does({ ...cell, name: cell.step, state: 'waiting' }, session.random()),
    cell,
  )
  if (next === null) throw new Error(`The step ${cell.step} has nothing to be given on its page.`)
  wait(session, Math.max(0, next.after))
  act(session, {
    ...next.data(stampNow(session)),
    kind: `${cell.kind}.${next.event}`,
    step: cell.step,
    place: cell.place,
  })
}

/** Where the order is the examiner's to choose: as the list has it. */
function chosenOrder({ choosing }: AtHand): EventBody | null {
  return choosing && { kind: 'ordered', ...choosing, items: [...choosing.items], rule: 'chosen' }
}

/** Now and then a trial goes wrong, as long as it may be made good; asked once a trial. */
function goesWrong(session: Session, { step, flight }: AtHand): boolean {
  if (flight?.status !== 'running' || session.judged.has(flight.id)) return false
  session.judged.add(flight.id)
  const left = step?.face().voidsLeft
  return session.random() < VOIDED && (left === null || (typeof left === 'number' && left > 0))
}

function perform(session: Session, step: StepAtHand): void {
  const { does = (_, drawn) => drawn } = session.simulation
  const next = session.runner.rehearse(session.administration, () => does(step, session.random()))
  if (next === null)
    throw new Error(`The step ${step.name} has nothing to go on with in state ${step.state}.`)
  wait(session, Math.max(0, next.after))
  act(session, {
    ...next.data(stampNow(session)),
    kind: `${step.kind}.${next.event}`,
    step: step.name,
    place: step.place,
  })
}
