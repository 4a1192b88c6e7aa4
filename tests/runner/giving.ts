/** Gives administrations in tests: a runner, made-up ids, wall times and one monotonic clock. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type ClientFacts, NOTHING_KNOWN } from '../../protocols/client.ts'
import type { Protocol } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import type { EventBody, Recorded, Stamp } from '../../protocols/runner/events.ts'
import { type Administration, type Runner, runnerFor } from '../../protocols/runner/index.ts'
import { type AdministrationView, administrationView } from '../../protocols/runner/view.ts'

export const ADMINISTRATION = '0192f000-0000-7000-8000-000000000000'

export const uuid = (n: number): string => `0192f000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`

/** Reads every file below a folder as a protocol's. */
function filesOf(folder: string): Map<string, string> {
  const files = new Map<string, string>()
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    if (/\.(ya?ml|csv|svg)$/.test(name)) {
      files.set(name.replaceAll('\\', '/'), readFileSync(join(folder, name), 'utf8'))
    }
  }
  return files
}

function sound(label: string, files: ReadonlyMap<string, string>): Protocol {
  const { protocol, diagnostics } = readProtocol({ label, files })
  if (protocol === null)
    throw new Error(
      JSON.stringify(
        diagnostics.filter((one) => one.severity === 'error'),
        null,
        2,
      ),
    )
  return protocol
}

export const libraryProtocol = (id: string): Protocol =>
  sound(id, filesOf(join(import.meta.dirname, '../../protocols/library', id)))

/** A protocol written for one test: its steps, and what else it needs. */
export function madeProtocol(steps: string, rest = ''): Protocol {
  const text = `
evenhand: 1
id: made
version: 1.0.0
language: en
title: Made
about:
  purpose: To try the runner.
  measures: [d440]
  minutes: [1, 2]
  suits: Nobody.
  longest-gap: 15 min
kit:
  board: { text: Board }
  pegs: { text: Pegs, check: Count them. }
${rest}
steps:
${steps}
`
  return sound('made', new Map([['protocol.yaml', text]]))
}

export type FactsChange = Partial<ClientFacts>
export const facts = (change: FactsChange = {}): ClientFacts => ({ ...NOTHING_KNOWN, ...change })
export const arm = (status: ClientFacts['arms']['right']['status']) => ({
  ...NOTHING_KNOWN.arms.right,
  status,
})

export const NO_CONDITIONS = {
  splint: '',
  glasses: 'none',
  hearingAid: 'none',
  seat: '',
  helper: '',
  sinceDose: '',
  tiredness: null,
} as const

const two = (n: number) => String(n).padStart(2, '0')

/** One administration being given, told as acts; each act returns what the runner said. */
export class Giving {
  readonly runner: Runner
  readonly log: Recorded[] = []
  administration: Administration
  /** ms on the monotonic clock. */
  now = 10_000
  clock = 'page-1'
  input: Stamp['input'] = 'key'
  /** Wall time, seconds after 09:00. */
  wall = 0
  private ids = 0
  readonly protocol: Protocol

  constructor(protocol: Protocol) {
    this.protocol = protocol
    this.runner = runnerFor(protocol)
    this.administration = this.runner.begin()
  }

  at(): string {
    const hours = Math.floor(this.wall / 3600) + 9
    const minutes = Math.floor(this.wall / 60) % 60
    return `2026-03-02T${two(hours)}:${two(minutes)}:${two(Math.floor(this.wall % 60))}+01:00`
  }

  view(): AdministrationView {
    return administrationView.parse(this.runner.view(this.administration, ADMINISTRATION))
  }

  /** Takes an event and whatever the host then owes; gives back why it was refused, or null. */
  take(body: EventBody): string | null {
    this.ids += 1
    const recorded = { id: uuid(this.ids), at: this.at(), user: 'Ida', body }
    const next = this.runner.take(this.administration, recorded)
    if ('refused' in next) return next.refused
    this.administration = next
    this.log.push(recorded)
    const owed = this.runner.owed(next, { random: () => 0, earlier: () => [] })
    return owed === null ? null : this.take(owed)
  }

  /** As `take`, for acts that have to be taken. */
  do(body: EventBody): this {
    const refused = this.take(body)
    if (refused !== null) throw new Error(`${body.kind} was refused: ${refused}`)
    return this
  }

  stamp(after = 2000): Stamp {
    this.now += after
    this.wall += after / 1000
    return { at: this.now, clock: this.clock, input: this.input, late: 1 }
  }

  /** A step's event where the administration stands. */
  body(event: string, data: Record<string, unknown> = {}): EventBody {
    const { step } = this.view()
    if (step === null) throw new Error(`No step is at hand for ${event}.`)
    const kind = event.includes('.') || RUNNERS_OWN.has(event) ? event : `${step.kind}.${event}`
    return { kind, step: step.name, place: step.place, ...data } as EventBody
  }

  press(event: string, after = 2000): this {
    return this.do(this.body(event, { stamp: this.stamp(after) }))
  }

  tryPress(event: string, after = 2000): string | null {
    return this.take(this.body(event, { stamp: this.stamp(after) }))
  }

  open(
    known: ClientFacts = facts({ dominantBefore: 'right' }),
    conditions: Record<string, string> = {},
  ): this {
    const { protocol } = this
    this.do({
      kind: 'opened',
      protocol: {
        id: protocol.id,
        version: protocol.version,
        hash: '0'.repeat(64),
        language: protocol.language,
        wording: null,
        from: 'library',
      },
      program: 'test',
      rehearsal: false,
      visit: null,
      on: '2026-03-02',
      examiner: { id: uuid(900), name: 'Ida' },
    })
    this.do({ kind: 'assigned', client: uuid(901), facts: known, reason: null })
    return this.do({
      kind: 'prepared',
      precautions: Object.fromEntries(protocol.precautions.map(({ id }) => [id, { answer: 'not_present' }])),
      restrictions: [],
      painNow: 0,
      visit: NO_CONDITIONS,
      kit: [],
      conditions,
    })
  }

  /** Up to the first step. */
  begin(known?: ClientFacts, conditions?: Record<string, string>): this {
    return this.open(known, conditions).do({ kind: 'confirmed', what: 'start' })
  }

  /** Does whatever comes before the next trial: kit, position, words, demonstration, rest. */
  toTrial(): this {
    for (;;) {
      const { step } = this.view()
      if (step === null) return this
      if (step.kind === 'kit') {
        const pieces = (step.face as { pieces: { id: string }[] }).pieces.map(({ id }) => id)
        this.do(this.body('checked', { ticked: pieces, problems: [], stamp: null }))
      } else if (step.kind === 'position') this.press('set')
      else if (step.kind === 'instruct') this.press('said')
      else if (step.kind === 'demonstrate') this.press('shown')
      else if (step.kind === 'rest') this.rest()
      else return this
    }
  }

  rest(): this {
    if (this.view().step?.state === 'waiting')
      this.do(this.body('began', { at: this.now, clock: this.clock }))
    const face = this.view().step?.face
    if (face === undefined) throw new Error('There is no rest.')
    const { least, from } = face as { least: number; from: { at: number } }
    this.now = Math.max(this.now, from.at + least * 1000)
    return this.do(this.body('over', { at: this.now, clock: this.clock }))
  }

  arm(): this {
    return this.press('armed')
  }

  start(): this {
    return this.arm().press('started')
  }

  /** A timed trial of so many seconds, kept. */
  time(seconds: number): this {
    return this.start()
      .press('stopped', seconds * 1000)
      .press('kept', 1500)
  }

  count(taps: number, windowSeconds: number, entered = taps): this {
    this.start()
    const start = this.now
    for (let tap = 0; tap < taps; tap += 1) this.press('tapped', 400)
    this.now = start + windowSeconds * 1000
    this.do(this.body('window_ended', { at: this.now, clock: this.clock }))
    return this.do(this.body('entered', { count: entered, confirmed: false })).press('kept')
  }

  measure(value: number): this {
    return this.do(this.body('entered', { value, confirmed: false })).press('kept')
  }

  /** Step and place in words, as `run at right, 2: waiting`. */
  where(): string {
    const { step, phase } = this.view()
    if (step === null) return phase === 'giving' ? 'end' : phase
    const place = Object.values(step.place).join(', ')
    const here = `${step.name}${place === '' ? '' : ` at ${place}`}: ${step.state}`
    return phase === 'giving' ? here : `${phase}, ${here}`
  }

  /** Rows of a step as `place outcome value`. */
  rows(step: string): string[] {
    return this.view()
      .trials.filter((trial) => trial.step === step && trial.status === 'standing')
      .map((trial) => {
        const place = Object.values(trial.place).join(' ')
        const values = Object.entries(trial.readings).map(
          ([name, { value, over }]) => `${name} ${over ? '≥' : ''}${value}`,
        )
        return [place, trial.outcome, ...values].filter((part) => part !== '').join(' ')
      })
  }
}

const RUNNERS_OWN = new Set(['voided', 'happened', 'skipped'])
