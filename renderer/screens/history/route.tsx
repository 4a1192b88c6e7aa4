import { go, type Route } from '../../app/route.ts'
import HistoryScreen from './index.tsx'

export default {
  path: 'history/:client/:protocol',
  title: 'app.window.history',
  Screen: ({ params }) => (
    <HistoryScreen
      client={params.client ?? ''}
      protocol={params.protocol ?? ''}
      onLeave={() => go(`client/${params.client ?? ''}`)}
    />
  ),
  client: 'client',
} satisfies Route
