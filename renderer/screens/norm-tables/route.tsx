import type { Route } from '../../app/route.ts'
import { NormTablesScreen } from './index.tsx'

export default {
  path: 'norms/:from/:key',
  title: 'app.window.norms',
  Screen: ({ params }) => (
    <NormTablesScreen
      protocol={{ from: params.from === 'clinic' ? 'clinic' : 'library', key: params.key ?? '' }}
    />
  ),
} satisfies Route
