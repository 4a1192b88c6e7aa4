import type { Route } from '../../app/route.ts'
import { FirstScreen } from './index.tsx'

export default { path: '', Screen: FirstScreen } satisfies Route
