import type { SectionKind } from '../kind.ts'
import { choice } from './choice.ts'
import { keys } from './keys.ts'

/** One of several lists of steps, by conditions judged once, when it is reached. */
export default {
  kind: 'choose',
  keys,
  texts: [],
  values: {},
  conditions: ['when'],
  loop: () => null,
  passes: () => null,
  found: null,
  chart: null,
  chooses: choice,
} satisfies SectionKind
