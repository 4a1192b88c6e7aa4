import type { Route } from '../../app/route.ts'
import { GivingScreen } from './index.tsx'

export default {
  path: 'administration/:store/:id',
  title: 'app.window.giving',
  Screen: ({ params }) => (
    <GivingScreen
      key={params.id}
      store={params.store === 'rehearsal' ? 'rehearsal' : 'records'}
      administration={params.id ?? ''}
    />
  ),
  isBare: true,
} satisfies Route
