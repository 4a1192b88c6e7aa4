import type { StepFace } from '../face.ts'
import { shown } from '../shown.ts'

/** The step's text and figure say it all. */
const Face = (): null => null

export default {
  ...shown,
  kind: 'position',
  Face,
  main: () => ({ key: 'steps.position.main' }),
} satisfies StepFace
