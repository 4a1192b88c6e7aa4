import type { SectionKind } from '../kind.ts'
import { keys } from './keys.ts'

/** Steps under a name, given once, in the order of the file: so that a rule can end them together. */
export default {
  kind: 'group',
  keys,
  texts: [],
  values: {},
  conditions: [],
  loop: () => null,
  passes: () => null,
  found: null,
  chart: null,
  onSheet: () => 'free',
  chooses: null,
} satisfies SectionKind
