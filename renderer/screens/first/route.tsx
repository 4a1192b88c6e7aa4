import type { Route } from '../../app/route.ts'
import { FirstScreen } from './index.tsx'

export default { path: '', title: 'app.window.first', Screen: FirstScreen } satisfies Route
