import type { Route } from '../../app/route.ts'
import { NewClientScreen } from '../profile/index.tsx'

export default { path: 'new-client', title: 'profile.new', Screen: NewClientScreen } satisfies Route
