import type { Route } from '../../app/route.ts'
import { NewClientScreen } from '../profile/index.tsx'

export default { path: 'new-client', Screen: NewClientScreen } satisfies Route
