import type { Route } from '../../app/route.ts'
import { AboutScreen } from './index.tsx'

export default { path: 'about', title: 'app.bar.about', Screen: AboutScreen } satisfies Route
