import type { Route } from '../../app/route.ts'
import { SettingsScreen } from './index.tsx'

export default { path: 'settings', title: 'settings.title', Screen: SettingsScreen } satisfies Route
