import { type ClientFacts, NOTHING_KNOWN } from '../../protocols/client.ts'
import type { Protocol } from '../../protocols/language/model.ts'
import { readProtocol } from '../../protocols/language/read.ts'
import type { EventBody, Recorded, Stamp } from '../../protocols/runner/events.ts'
import { type Administration, type Runner, runnerFor } from '../../protocols/runner/index.ts'
import type { AdministrationView, StepView } from '../../protocols/runner/view.ts'
import { folderOf } from './folders.ts'

type Arm = ClientFacts['arms']['right']

const arm = (status: Arm['status']): Arm => ({
  status,
  condition: '',
  since: '',
  absentPart: '',
  restrictions: [],
})

/** Facts of a healthy right-handed client of unknown age and sex; what differs is given. */
export const facts = (of: Partial<ClientFacts> = {}): ClientFacts => ({
  ...NOTHING_KNOWN,
  dominantBefore: 'right',
  usedNow: 'right',
  ...arms('unaffected', 'unaffected'),
  ...of,
})

/** Both arms, with a status each. */
export const arms = (right: Arm['status'], left: Arm['status']): Pick<ClientFacts, 'arms'> => ({
  arms: { right: arm(right), left: arm(left) },
})

/** Who it is given to, and how the conditions stand that aren't as usual. */
export interface Occasion {
  readonly facts?: ClientFacts
  readonly conditions?: Readonly<Record<string, string>>
}

const CLOCK = 'page-1'

const made = new Map<string, Pick<LogBook, 'protocol' | 'runner'>>()

/** A protocol and its runner: neither changes, so each is made once for a file of tests. */
function madeOnce(name: string): Pick<LogBook, 'protocol' | 'runner'> {
  const before = made.get(name)
  if (before) return before
  const { protocol } = readProtocol(folderOf(name))
  if (!protocol) throw new Error(`${name} can't be read`)
  const now = { protocol, runner: runnerFor(protocol) }
  made.set(name, now)
  return now
}

/** The log of one administration, each event taken by the runner at once. One made-up clock runs along. */
export class LogBook {
  readonly protocol: Protocol
  readonly runner: Runner
  readonly log: Recorded[] = []
  #administration: Administration
  /** The view of the administration as it stands; null once an event was taken. */
  #view: AdministrationView | null = null
  #now = 0

  constructor(name: string) {
    const { protocol, runner } = madeOnce(name)
    this.protocol = protocol
    this.runner = runner
    this.#administration = this.runner.begin()
  }

  /** Appends an event, and what the host owes after it. Throws with the refusal when it isn't taken. */
  act(body: EventBody): void {
    const event: Recorded = {
      id: `01990000-0000-7000-8000-${(this.log.length + 1).toString(16).padStart(12, '0')}`,
      at: new Date(Date.UTC(2026, 2, 2, 9) + this.#now).toISOString().replace('Z', '+00:00'),
      user: 'examiner',
      body,
    }
    const next = this.runner.take(this.#administration, event)
    if ('refused' in next) {
      const { name = this.view().phase, place = {} } = this.step() ?? {}
      throw new Error(`${body.kind} at ${name} ${JSON.stringify(place)}: ${next.refused}`)
    }
    this.#administration = next
    this.#view = null
    this.log.push(event)
    const owed = this.runner.owed(next, { random: () => 0, earlier: () => [] })
    if (owed) this.act(owed)
  }

  /** Opens the log, with every precaution answered as not present, up to the first step. */
  open({ facts: about = facts(), conditions = {} }: Occasion): void {
    const { id, version } = this.protocol
    const hash = '0'.repeat(64)
    this.act({
      kind: 'opened',
      protocol: { id, version, hash, language: 'en', wording: null, from: 'library' },
      program: '0.1.0',
      rehearsal: false,
      visit: null,
      on: '2026-03-02',
      examiner: { id: '01990000-0000-7000-8000-00000000ffff', name: 'Examiner' },
    })
    this.act({ kind: 'assigned', client: null, facts: about, reason: null })
    const answers = this.protocol.precautions.map((each) => [each.id, { answer: 'not_present' as const }])
    this.act({
      kind: 'prepared',
      precautions: Object.fromEntries(answers),
      restrictions: [],
      painNow: null,
      visit: {
        splint: '',
        glasses: 'none',
        hearingAid: 'none',
        seat: '',
        helper: '',
        sinceDose: '',
        tiredness: null,
      },
      kit: [],
      conditions,
    })
    this.act({ kind: 'confirmed', what: 'start' })
  }

  view(): AdministrationView {
    this.#view ??= this.runner.view(this.#administration, this.log[0]?.id ?? '')
    return this.#view
  }

  step(): StepView | null {
    return this.view().step
  }

  /** The step at hand. */
  here(): StepView {
    const step = this.step()
    if (!step) throw new Error('There is no step left.')
    return step
  }

  /** An event of the step at hand. */
  press(event: string, data: Readonly<Record<string, unknown>>): void {
    const { name, place, kind } = this.here()
    this.act({ kind: `${kind}.${event}`, step: name, place, ...data })
  }

  /** The stamp of a key pressed so many ms after the last one. */
  stamp(after: number): Stamp {
    return { ...this.tick(after), input: 'key', late: 0 }
  }

  /** The stamp of a key pressed at this moment of the clock. */
  stampAt(at: number): Stamp {
    return this.stamp(at - this.#now)
  }

  /** The clock, so many ms later. */
  tick(after: number): { readonly at: number; readonly clock: string } {
    this.#now += after
    return { at: this.#now, clock: CLOCK }
  }
}
