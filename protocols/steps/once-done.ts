/** What the kinds have in common that are shown or done once and left by the main key: they measure nothing. */
import { z } from 'zod'
import type { StepKind } from './kind.ts'
import { onceDoneChart, pressed } from './press.ts'
import { press } from './telling.ts'

interface Parts {
  readonly kind: string
  /** The event that leaves it. */
  readonly event: string
  readonly precedes: boolean
  /** How long a simulated examiner takes, from the shortest to the longest, in ms. */
  readonly takes: readonly [number, number]
}

export const onceDone = ({ kind, event, precedes, takes: [shortest, longest] }: Parts): StepKind => ({
  kind,
  keys: z.strictObject({}),
  texts: [],
  cues: [],
  values: {},
  columns: () => ({}),
  plausible: () => null,
  precedes,
  events: { [event]: pressed },
  chart: onceDoneChart(event),
  // Beside text and figure the screen shows only when the key comes alive again after a stop.
  face: ({ dead }) => ({ dead }),
  rehearse: (_moment, random) => ({
    event,
    after: shortest + random() * (longest - shortest),
    data: (stamp) => ({ stamp }),
  }),
  outcomes: () => [{ label: event, events: [press(event)] }],
})
