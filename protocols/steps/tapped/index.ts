import { refuse } from '../../runner/refuse.ts'
import type { StepKind } from '../kind.ts'
import { armed, started } from '../arming.ts'
import { tapped, windowEnded } from '../window.ts'
import { chart, kept, settled } from './chart.ts'
import { face } from './face.ts'
import { keys } from './keys.ts'
import { outcomes } from './outcomes.ts'
import { rehearse } from './rehearse.ts'

/** A trial that counts the client's own presses within a window, by their stamps; those after the end are kept apart. */
export default {
  kind: 'tapped',
  keys,
  texts: [],
  cues: ['start'],
  values: { window: 'time', bounce: 'time' },
  columns: () => ({ count: { is: 'number', unit: '{count}' }, after: { is: 'number', unit: '{count}' } }),
  plausible: () => null,
  misfits: (_moment, column, value) =>
    Number.isInteger(value) && Number(value) >= 0 ? null : refuse('not_whole', { column }),
  precedes: false,
  events: { armed, started, tapped, window_ended: windowEnded, settled, kept },
  chart,
  face,
  rehearse,
  outcomes,
} satisfies StepKind
