/** How made-up administrations begin: answered, with the conditions as they usually are. */
import type { Protocol } from '../language/model.ts'
import type { Clearance, EventBody, Recorded } from '../runner/events.ts'

export type Opened = Extract<EventBody, { readonly kind: 'opened' }>
export type Prepared = Extract<EventBody, { readonly kind: 'prepared' }>

/** The clock of the made-up page. */
export const CLOCK = 'simulated'

/** `conditions`: those that aren't as they usually are. */
export function preparedFor(
  protocol: Protocol,
  kit: Prepared['kit'],
  conditions: Readonly<Record<string, string>>,
): Prepared {
  const answered: Clearance = { answer: 'not_present' }
  return {
    kind: 'prepared',
    precautions: Object.fromEntries(protocol.precautions.map(({ id }) => [id, answered])),
    restrictions: [],
    painNow: 0,
    visit: {
      splint: '',
      glasses: 'none',
      hearingAid: 'none',
      seat: '',
      helper: '',
      sinceDose: '',
      tiredness: null,
    },
    kit: [...kit],
    conditions: conditionsOf(protocol, conditions),
  }
}

/** As told, else as usual, else the first there is. */
function conditionsOf(protocol: Protocol, told: Readonly<Record<string, string>>): Record<string, string> {
  const stand: Record<string, string> = {}
  for (const { name, setBy, usual, options } of protocol.conditions) {
    const option = told[name] ?? usual ?? options[0]?.id
    if (setBy !== 'file' && option !== undefined) stand[name] = option
  }
  return stand
}

/** What follows on being prepared: the clock of the page and the start. */
export const STARTING: readonly Recorded['body'][] = [
  { kind: 'clock', clock: CLOCK, resolutionMs: 0.005, isolated: true },
  { kind: 'confirmed', what: 'start' },
]
