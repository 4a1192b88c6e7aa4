import type { Route } from '../../app/route.ts'
import { SettingsScreen } from './index.tsx'

export default { path: 'settings', Screen: SettingsScreen } satisfies Route
